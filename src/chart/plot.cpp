#include "plot.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "framed.hpp"
#include "letters.hpp"
#include "wattweek/diag/number_text.hpp"

namespace wattweek::chart {
namespace {

// Between numbers side by side.
constexpr double kBetween = 14;

std::string upright(double x, double top, double bottom) {
  return fmt::format("M{}V{}", coordinates(x, top), coordinate(bottom));
}

std::string level(double y, double left, double right) {
  return fmt::format("M{}H{}", coordinates(left, y), coordinate(right));
}

}  // namespace

double kept_inside(double middle, double width) {
  const double half = std::min(width / 2, kWidth / 2 - kMargin / 2);
  return std::clamp(middle, kMargin / 2 + half, kWidth - kMargin / 2 - half);
}

std::string tick_text(const Ticks& ticks, int i) {
  return diag::fixed(ticks.at(i), ticks.decimals());
}

double widest_tick(const Ticks& ticks) {
  double widest = 0;
  for (int i = 0; i < ticks.count; ++i) {
    widest = std::max(widest, text_width(tick_text(ticks, i), kSmallSize));
  }
  return widest;
}

Ticks ticks_along(Range values, double length) {
  constexpr int kFewest = 3;
  for (int most = 8; most > kFewest; --most) {
    const Ticks ticks = nice_ticks(values, most);
    if ((ticks.count - 1) * (widest_tick(ticks) + kBetween) <= length) return ticks;
  }
  return nice_ticks(values, kFewest);
}

Ticks ticks_up(Range values) { return nice_ticks(values, 7); }

double draw_lower_axis(Canvas& canvas, const Area& area, const Axis& axis, std::string_view unit,
                       bool grid) {
  std::string lines;
  std::string marks = level(area.bottom, area.left, area.right);
  for (int i = 0; i < axis.ticks.count; ++i) {
    const double x = axis.scale.at(axis.ticks.at(i));
    const std::string number = tick_text(axis.ticks, i);
    if (grid) lines += upright(x, area.top, area.bottom);
    marks += upright(x, area.bottom, area.bottom + 4);
    canvas.text(kept_inside(x, text_width(number, kSmallSize)), area.bottom + 18, number,
                "small mid");
  }
  canvas.path(lines, "grid");
  canvas.path(marks, "axis");
  canvas.text(area.right, area.bottom + 36, shortened(unit, area.right - kMargin, kSmallSize),
              "small end muted");
  return area.bottom + 40;
}

void draw_left_axis(Canvas& canvas, const Area& area, const Axis& axis, std::string_view unit,
                    double unit_y) {
  std::string lines;
  for (int i = 0; i < axis.ticks.count; ++i) {
    const double y = axis.scale.at(axis.ticks.at(i));
    lines += level(y, area.left, area.right);
    canvas.text(area.left - 6, y + 4.5, tick_text(axis.ticks, i), "small end");
  }
  canvas.path(lines, "grid");
  canvas.text(kMargin, unit_y, shortened(unit, kWidth - 2 * kMargin, kSmallSize), "small muted");
}

}  // namespace wattweek::chart
