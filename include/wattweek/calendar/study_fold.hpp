#pragma once
// A study's habits, rests and price bands as conditions, and the fold over them.

#include <cstdint>
#include <optional>
#include <vector>

#include "wattweek/calendar/fold.hpp"
#include "wattweek/model/study.hpp"

namespace wattweek::calendar {

/// Where each use and each rest stands among the conditions of the fold.
struct ConditionIndex {
  std::vector<std::vector<std::uint32_t>> use;                ///< [workload][use]
  std::vector<std::vector<std::vector<std::uint32_t>>> rest;  ///< [candidate][device][rest]
};

struct FoldedStudy {
  Fold fold;
  ConditionIndex index;
  /// By situation: an hour of the local week in which every profile with a `week` draws what it
  /// draws in that situation; see `model::WeekOfWatts`. Empty where no profile has one.
  std::vector<std::uint32_t> hour_of_week;
};

/// Folds a whole study. \pre `zone` is the study's zone, over its time.
FoldedStudy fold_study(const model::Study& study, const ZoneRules& zone);

/// The same with the slots of the local week in place of the price bands: band
/// `d * slots_per_day + i` is slot i of weekday d, Monday being 0. Each date is its own weekday,
/// holidays too.
/// \pre `slots_per_day` divides 1440.
FoldedStudy fold_week(const model::Study& study, const ZoneRules& zone, int slots_per_day);

/// The first local time in the months that no band of the tariff covers; nothing where all is
/// covered.
std::optional<LocalTime> first_uncovered(const model::Tariff& tariff, std::chrono::year_month start,
                                         int months, const ZoneRules& zone);

}  // namespace wattweek::calendar
