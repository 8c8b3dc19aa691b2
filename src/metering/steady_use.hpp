#pragma once
// Intervals in which nothing changed what was in use.

#include <vector>

#include "awake_cells.hpp"
#include "wattweek/metering/activity.hpp"

namespace wattweek::metering {

/// Of each design, whether these units were in use at one moment, as noted, and so over a whole
/// interval: a mean over a change lies between.
std::vector<bool> steady_designs(const Measured& measured, const Activity& activity);

/// Do these designs hold at least half of the time, and half of the unit-hours of each workload?
bool hold_most(const AwakeCells& cells, const std::vector<bool>& designs);

}  // namespace wattweek::metering
