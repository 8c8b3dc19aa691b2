#pragma once
// The names of lines at their right ends, without one on top of another.

#include <string>
#include <vector>

#include "canvas.hpp"
#include "plot.hpp"

namespace wattweek::chart {

/// What stands at a line's end.
struct End {
  std::size_t series = 0;
  double x = 0;  ///< Where the line ends.
  double y = 0;
  std::string name;
};

/// The height of one name.
inline constexpr double kEndHeight = 17;

/// Where names that want to stand at these heights stand: at least `gap` apart, between `low` and
/// `high` as long as there is room, and moved as little as that allows (the least sum of squares,
/// apart from the limits). In the order of `wanted`.
std::vector<double> spread(const std::vector<double>& wanted, double gap, Range within);

/// Draws the names beside the area, each with a lead from its line's end.
void draw_ends(Canvas& canvas, const Area& area, const std::vector<End>& ends);

}  // namespace wattweek::chart
