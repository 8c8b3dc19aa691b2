#pragma once
// Parts on top of each other.

#include <vector>

#include "wattweek/chart/axis.hpp"
#include "wattweek/chart/months.hpp"

namespace wattweek::chart {

/// The largest parts in their order (by the sum of their values' sizes, the first of equals), the
/// rest added up as one last part; as they are where there are no more than `most`.
std::vector<Part> merged(const std::vector<Part>& parts, std::size_t most);

/// Where each part of each month begins and ends: `[part][month]`. Values above zero go up from
/// what lies there already, values below zero down.
std::vector<std::vector<Range>> stacked(const std::vector<Part>& parts, std::size_t months);

/// The sum of each month.
std::vector<double> sums(const std::vector<Part>& parts, std::size_t months);

}  // namespace wattweek::chart
