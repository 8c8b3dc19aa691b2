#include "wattweek/chart/lines.hpp"

#include <algorithm>

#include "lined.hpp"

namespace wattweek::chart {
namespace {

void include(Range& range, double value, bool& first) {
  range.low = first ? value : std::min(range.low, value);
  range.high = first ? value : std::max(range.high, value);
  first = false;
}

Range xs_of(const Lines& picture) {
  Range range;
  bool first = true;
  for (const Line& line : picture.lines) {
    for (const Point& point : line.points) include(range, point.x, first);
  }
  for (const Marker& marker : picture.markers) include(range, marker.x, first);
  return range;
}

Range ys_of(const Lines& picture) {
  Range range;
  bool first = true;
  for (const Line& line : picture.lines) {
    for (const Point& point : line.points) {
      include(range, point.y, first);
      if (!point.range) continue;
      include(range, point.range->low, first);
      include(range, point.range->high, first);
    }
  }
  for (const Marker& marker : picture.markers) {
    if (marker.y) include(range, *marker.y, first);
  }
  return range;
}

}  // namespace

std::string svg(const Lines& picture) {
  const Range ys = ys_of(picture);
  return lined(picture, xs_of(picture), picture.y_from_zero ? with_zero(ys) : ys, false);
}

}  // namespace wattweek::chart
