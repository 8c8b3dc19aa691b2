#pragma once
// For how many hours a candidate draws how much: the exact distribution of its watts over the
// study.

#include <vector>

#include "wattweek/calendar/zone.hpp"
#include "wattweek/decide/progress.hpp"
#include "wattweek/energy/load_hours.hpp"
#include "wattweek/model/study.hpp"

namespace wattweek::decide {

using energy::LoadHours;

/// One candidate's loads, the most watts first, no watts twice; the hours sum to the study's, hours
/// times watts to its energy. Empty where the devices' joint outcomes are too many to be merged:
/// more than `power::kMostLoadOutcomes` of them, over all situations.
using LoadDuration = std::vector<LoadHours>;

/// The load durations of all candidates, in the study's order.
/// \pre `assess` has accepted the study.
std::vector<LoadDuration> load_durations(const model::Study& study, const calendar::ZoneRules& zone,
                                         const Progress& progress = {});

}  // namespace wattweek::decide
