#pragma once
// What lines and load-duration curves share: lines in axes, named at their right ends.

#include <string>
#include <vector>

#include "wattweek/chart/lines.hpp"

namespace wattweek::chart {

/// Draws `picture` in axes that hold `xs` and `ys`. `filled`: the area below the first line, too.
std::string lined(const Lines& picture, Range xs, Range ys, bool filled);

}  // namespace wattweek::chart
