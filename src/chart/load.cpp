#include "wattweek/chart/load.hpp"

#include <algorithm>
#include <cassert>

#include "lined.hpp"

namespace wattweek::chart {
namespace {

// The loads as the corners of falling steps.
std::vector<Point> steps_of(std::vector<Load> loads) {
  std::stable_sort(loads.begin(), loads.end(),
                   [](const Load& a, const Load& b) { return a.watts > b.watts; });
  std::vector<Point> corners;
  double hours = 0;
  for (const Load& load : loads) {
    assert(load.watts >= 0 && load.hours >= 0);
    if (corners.empty() || corners.back().y != load.watts) {
      corners.insert(corners.end(), 2, Point{hours, load.watts, {}});
    }
    hours += load.hours;
    corners.back().x = hours;
  }
  return corners;
}

Range reach(const Lines& lines, double Point::*of) {
  Range range;
  for (const Line& line : lines.lines) {
    for (const Point& point : line.points) range.high = std::max(range.high, point.*of);
  }
  return range;
}

}  // namespace

std::string svg(const LoadDuration& picture) {
  Lines lines;
  lines.frame = picture.frame;
  lines.x_unit = "hours at these watts or more";
  lines.y_unit = "W";
  for (const LoadCurve& curve : picture.curves) {
    lines.lines.push_back({curve.name, steps_of(curve.loads)});
  }
  return lined(lines, reach(lines, &Point::x), reach(lines, &Point::y), lines.lines.size() == 1);
}

}  // namespace wattweek::chart
