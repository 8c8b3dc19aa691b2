#pragma once
// Rows into readings, one by one, under a layout.

#include <optional>
#include <string>
#include <vector>

#include "fields.hpp"
#include "layout.hpp"
#include "local_clock.hpp"
#include "row_time.hpp"

namespace wattweek::logs {

/// A row that fits another layout than the one inferred.
struct Contradiction {
  std::uint64_t line = 0;
  std::string message;
};

class RowReader {
 public:
  /// `zone`: of times that name none; may be null where all do. `written_once`: see `LocalClock`.
  RowReader(const Layout& layout, const calendar::ZoneRules* zone,
            const LocalClock::Hours& written_once = {});

  /// The reading of a row, NaN where its value cannot be used; nothing where the row has no time,
  /// is not one of those that are kept, or contradicts the layout.
  std::optional<Reading> read(const Fields& fields, std::uint64_t line);

  /// Rows with data so far, of those that are kept.
  std::size_t rows() const { return rows_; }
  void count_row() { ++rows_; }
  /// Rows were read elsewhere, up to this time.
  void went_on_to(Microseconds at_us) {
    if (clock_) clock_->went_on_to(at_us);
  }
  /// See `LocalClock`.
  LocalClock::Hours without_first_pass() const {
    return clock_ ? clock_->without_first_pass() : LocalClock::Hours{};
  }
  /// Counts a row that is dropped.
  void drop(std::string_view reason, std::uint64_t line);
  const std::vector<Dropped>& dropped() const { return dropped_; }
  const std::optional<Contradiction>& contradiction() const { return contradiction_; }

 private:
  std::optional<Microseconds> moment(const RowTime& time);
  std::optional<RowTime> row_time(const Fields& fields, std::uint64_t line);
  std::optional<Number> first_with_mark(std::string_view field, std::uint64_t line);
  bool is_of_other_device(const Fields& fields, std::uint64_t line);
  double value_of(std::string_view field, std::uint64_t line);
  double usable(double value, double factor, std::uint64_t line);
  void contradict(std::uint64_t line, std::string message);
  bool repeats_headings(const Fields& fields) const;

  const Layout& layout_;
  NumberStyle style_;
  KnownDate known_date_;
  double factor_;
  std::optional<LocalClock> clock_;
  std::size_t rows_ = 0;
  std::vector<Dropped> dropped_;
  std::optional<Contradiction> contradiction_;
};

}  // namespace wattweek::logs
