#pragma once
// The fold: which situations occur in a period, and for how long in each month and price band.
//
// A year has half a million minutes, but the week repeats. At any instant only three things
// matter: the month, the price band, and the situation - the set of conditions that hold. The
// local days are walked once; a day is cut at the edges of the windows that can hold on it, and
// days on which the same filters pass share one cutting, the day pattern. A study is then a few
// day patterns and how often each occurs in each month. Days on which the clocks change, and
// only those, are cut by instants and become patterns of their own.
//
// All time is counted in whole seconds, so the sums are exact.
//
// Cost: one filter test for each day and distinct filter, one cutting for each pattern.

#include <cstddef>
#include <cstdint>
#include <optional>
#include <vector>

#include "wattweek/calendar/zone.hpp"
#include "wattweek/model/tariff.hpp"
#include "wattweek/model/window.hpp"

namespace wattweek::calendar {

/// Something that holds at an instant or not: any of the windows, except on some dates (the
/// governing day of the window decides), with some dates counting as another weekday.
/// Points into the model, which must outlive the call.
struct Condition {
  std::vector<const model::Window*> windows;
  std::vector<model::DateSpan> except;
  const model::Holidays* holidays = nullptr;  ///< Null: every date is its own weekday.
};

/// What is folded. The first of `bands` that holds sets the band of an instant; without bands
/// everything is band 0.
struct FoldInput {
  std::chrono::year_month start;
  int months = 12;
  std::vector<Condition> conditions;
  std::vector<Condition> bands;
};

/// A stretch of a day in one band and one situation.
struct Slice {
  std::int64_t seconds = 0;
  std::uint32_t band = 0;       ///< `kNoBand` where no band holds.
  std::uint32_t situation = 0;  ///< Index for `Fold::holds`.
};

inline constexpr std::uint32_t kNoBand = 0xFFFFFFFF;

/// A day's slices, in clock order, and how often the day occurs in each month.
struct DayPattern {
  struct Count {
    std::uint32_t month = 0;  ///< Index into `Fold::months`.
    std::int64_t days = 0;
  };
  LocalTime first;  ///< When its first slice first starts.
  std::vector<Slice> slices;
  std::vector<Count> counts;
};

/// The folded period.
class Fold {
 public:
  std::vector<Month> months;
  std::size_t bands = 1;
  std::vector<DayPattern> patterns;
  /// First local time that no band covers, if any; a valid study has none.
  std::optional<LocalTime> first_uncovered;
  /// For each condition, for each of its windows: does it hold at any instant?
  std::vector<std::vector<bool>> condition_windows_ever_hold;
  /// The same for the bands' windows, whether or not an earlier band holds too.
  std::vector<std::vector<bool>> band_windows_ever_hold;

  std::size_t situations() const { return words_ == 0 ? 1 : bits_.size() / words_; }
  /// Does the condition hold in the situation?
  bool holds(std::size_t situation, std::size_t condition) const {
    return (bits_[situation * words_ + condition / 64] >> (condition % 64) & 1U) != 0;
  }
  std::size_t cells() const { return months.size() * bands; }
  /// Row of a month and band in the matrices of the computing rooms.
  std::size_t cell(std::size_t month, std::size_t band) const { return month * bands + band; }

 private:
  friend class Folder;
  std::size_t words_ = 0;
  std::vector<std::uint64_t> bits_;
};

/// Folds a period. \pre `zone` covers the period, a day more on both sides.
Fold fold(const FoldInput& input, const ZoneRules& zone);

/// The first local time at which one of the marked situations holds.
/// \pre At least one of them occurs.
LocalTime first_time_of(const Fold& folded, const std::vector<bool>& marked_situations);

/// Seconds of each situation, over all months and bands.
std::vector<std::int64_t> seconds_by_situation(const Fold& folded);

/// Seconds of each cell (month, band).
std::vector<std::int64_t> seconds_by_cell(const Fold& folded);

/// Seconds of each (cell, group of situations): entry `[group * cells + cell]`, where
/// `group_of[situation]` names the group.
std::vector<std::int64_t> seconds_by_cell_and_group(const Fold& folded,
                                                    const std::vector<std::uint32_t>& group_of,
                                                    std::size_t groups);

}  // namespace wattweek::calendar
