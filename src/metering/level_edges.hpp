#pragma once
// Where one level ends and the next begins.

#include <vector>

#include "wattweek/metering/measured.hpp"

namespace wattweek::metering {

/// Bins at which levels begin, lowest first: 0 for the first; behind them all, the end of the
/// histogram. Empty for a histogram without time. The rule stands at levels_of.
std::vector<std::size_t> level_edges(const Histogram& histogram, double resolution_w);

}  // namespace wattweek::metering
