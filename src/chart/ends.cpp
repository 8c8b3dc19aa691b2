#include "ends.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <numeric>

#include "parts.hpp"

namespace wattweek::chart {

std::vector<double> spread(const std::vector<double>& wanted, double gap, Range within) {
  std::vector<std::size_t> order(wanted.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(),
                   [&](std::size_t a, std::size_t b) { return wanted[a] < wanted[b]; });
  std::vector<double> placed = wanted;
  double least = within.low;
  for (const std::size_t i : order) {
    placed[i] = std::max(placed[i], least);
    least = placed[i] + gap;
  }
  double most = within.high;
  for (auto i = order.rbegin(); i != order.rend(); ++i) {
    placed[*i] = std::min(placed[*i], most);
    most = placed[*i] - gap;
  }
  return placed;
}

void draw_ends(Canvas& canvas, const Area& area, const std::vector<End>& ends) {
  std::vector<double> wanted;
  for (const End& end : ends) wanted.push_back(end.y);
  const auto placed = spread(wanted, kEndHeight, {area.top + 4, area.bottom - 4});
  for (std::size_t i = 0; i < ends.size(); ++i) {
    const End& end = ends[i];
    canvas.path(fmt::format("M{}L{}H{}", coordinates(end.x, end.y),
                            coordinates(area.right + 10, placed[i]), coordinate(area.right + 14)),
                colour_class(end.series) + " lead");
    canvas.text(area.right + 17, placed[i] + 4.5, end.name, "small");
  }
}

}  // namespace wattweek::chart
