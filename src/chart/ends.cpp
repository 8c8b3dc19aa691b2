#include "ends.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <numeric>

#include "parts.hpp"

namespace wattweek::chart {
namespace {

// Neighbours that stand as close as they may.
struct Pool {
  double sum = 0;
  std::size_t count = 0;

  double mean() const { return sum / static_cast<double>(count); }
};

std::vector<std::size_t> ascending(const std::vector<double>& values) {
  std::vector<std::size_t> order(values.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(),
                   [&](std::size_t a, std::size_t b) { return values[a] < values[b]; });
  return order;
}

}  // namespace

// Less its place in the row, each name may stand no higher than the one before it: an isotonic
// regression, solved by pooling neighbours that violate it (Ayer et al., "An empirical distribution
// function for sampling with incomplete information", Ann. Math. Statist. 26, 1955).
std::vector<double> spread(const std::vector<double>& wanted, double gap, Range within) {
  const std::vector<std::size_t> order = ascending(wanted);
  std::vector<Pool> pools;
  for (std::size_t i = 0; i < order.size(); ++i) {
    pools.push_back({wanted[order[i]] - gap * static_cast<double>(i), 1});
    while (pools.size() > 1 && pools[pools.size() - 2].mean() > pools.back().mean()) {
      const Pool last = pools.back();
      pools.pop_back();
      pools.back() = {pools.back().sum + last.sum, pools.back().count + last.count};
    }
  }
  const double highest =
      within.high - gap * static_cast<double>(std::max<std::size_t>(order.size(), 1) - 1);
  std::vector<double> placed(wanted.size());
  std::size_t i = 0;
  for (const Pool& pool : pools) {
    for (std::size_t end = i + pool.count; i < end; ++i) {
      placed[order[i]] =
          std::max(std::min(pool.mean(), highest), within.low) + gap * static_cast<double>(i);
    }
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
