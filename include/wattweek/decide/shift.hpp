#pragma once
// A workload moved to every start hour of the week: when it costs least under the tariff, and what
// that saves, work that goes unserved never hidden.

#include <cstddef>
#include <optional>
#include <variant>
#include <vector>

#include "wattweek/decide/assessment.hpp"

namespace wattweek::decide {

inline constexpr int kHoursOfWeek = model::kHoursOfWeek;

/// Whether the windows of a workload can be moved.
enum class Movable {
  yes,
  all_day,  ///< No use names hours: there is no start.
  /// Hours of a use that names days overlap on the clock, and may be torn apart by midnight.
  overlaps,
};

Movable movable(const model::Workload& workload);

/// The workload with all windows of its uses that many hours later, 0 or more. Hours move by the
/// clock, days by the midnights that a start passes; months and dates stay, and are judged by the
/// new governing day. A use whose hours then belong to different days becomes several.
/// \pre `movable` says yes.
model::Workload moved(const model::Workload& workload, int hours);

/// When the first span of a workload starts.
struct StartTime {
  std::optional<unsigned> weekday_bit;  ///< Nothing where no use names days.
  int minute = 0;                       ///< Of the clock.

  friend bool operator==(const StartTime&, const StartTime&) = default;
};

/// One candidate at one start, over the whole study.
struct StartFigures {
  double energy_kwh = 0;
  double cost = 0;
  energy::UnitHours unit_hours;  ///< Of the moved workload.
  double workload_kwh = 0;       ///< Its part of the energy,
  double workload_cost = 0;      ///< and of the cost.
};

struct Start {
  int hours_later = 0;  ///< Than today.
  StartTime time;
  std::vector<StartFigures> candidates;
};

/// A start against today's; `saves_*` a year.
struct StartChoice {
  std::size_t start = 0;  ///< Index into `Shift::starts`.
  double saves_kwh = 0;
  double saves_cost = 0;
  std::optional<double> saves_present_cost;  ///< Over the horizon; nothing without one.
};

/// What is said about one candidate.
struct ShiftChoice {
  /// Of the starts at which no more goes unserved than today, the one that costs least for the work
  /// that is done today; of equal ones the earliest after today's. Nothing where the candidate
  /// skips the workload.
  std::optional<StartChoice> cheapest;
  /// A start that costs less than that only because more goes unserved: the lowest cost of all.
  std::optional<StartChoice> cheaper_unserved;
};

struct Shift {
  std::size_t workload = 0;
  std::vector<Start> starts;  ///< All that differ, today's first, each later than the one before.
  std::vector<ShiftChoice> choices;  ///< Of each candidate.
};

/// Reckons the workload at every start hour. The household's own use stays as it is today.
/// \pre `assess` gave `today` for the study, and the workload is movable.
std::variant<Shift, std::vector<diag::Diagnostic>> shift(const model::Study& study,
                                                         const calendar::ZoneRules& zone,
                                                         const Assessment& today,
                                                         std::size_t workload,
                                                         const Progress& progress = {});

}  // namespace wattweek::decide
