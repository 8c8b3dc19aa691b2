#include "wattweek/chart/bars.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cassert>
#include <cmath>

#include "framed.hpp"
#include "letters.hpp"
#include "plot.hpp"
#include "wattweek/diag/printable.hpp"

namespace wattweek::chart {
namespace {

constexpr double kNameLine = 18;
constexpr double kBarHeight = 16;
constexpr double kBetweenBars = 14;

// All that the axis has to hold.
Range range_of(const std::vector<Bar>& bars) {
  Range all;
  for (const Bar& bar : bars) {
    const Range own = bar.range.value_or(Range{bar.value, bar.value});
    all.low = std::min({all.low, own.low, bar.value});
    all.high = std::max({all.high, own.high, bar.value});
  }
  return all;
}

Axis axis_of(const std::vector<Bar>& bars) {
  const double length = kWidth - 2 * kMargin;
  const Ticks ticks = ticks_along(range_of(bars), length);
  return {ticks, {ticks.range(), kMargin + 4, kWidth - kMargin - 8}};
}

// The name, and its number at the right end of the first line. Returns where they end.
double draw_words(Canvas& canvas, const Bar& bar, double top) {
  const double width = kWidth - 2 * kMargin;
  const std::string number = diag::printable(bar.value_text);
  const double beside = width - text_width(number, kBold * kTextSize) - 12;
  canvas.text(kWidth - kMargin, top + 14, number, "end strong");
  for (const std::string& line :
       wrapped(bar.name, {std::max(beside, kWidth / 3), width, 2}, kTextSize)) {
    canvas.text(kMargin, top + 14, line);
    top += kNameLine;
  }
  return top + 2;
}

void draw_grid(Canvas& canvas, const Axis& axis, double top) {
  std::string lines;
  for (int i = 0; i < axis.ticks.count; ++i) {
    const double x = axis.scale.at(axis.ticks.at(i));
    lines += fmt::format("M{}v{}", coordinates(x, top), coordinate(kBarHeight));
  }
  canvas.path(lines, "grid");
}

// From low to high with caps, on a wider line of the paper's colour: seen on the bar and beside it.
void draw_whisker(Canvas& canvas, const Axis& axis, const Range& range, double top) {
  const double low = axis.scale.at(range.low);
  const double high = axis.scale.at(range.high);
  const double y = top + kBarHeight / 2;
  const std::string data =
      fmt::format("M{}v8M{}H{}M{}v8", coordinates(low, y - 4), coordinates(low, y),
                  coordinate(high), coordinates(high, y - 4));
  canvas.path(data, "halo");
  canvas.path(data, "whisker");
}

// Returns where the bar ends.
double draw_bar(Canvas& canvas, const Axis& axis, const Bar& bar, double top) {
  assert(std::isfinite(bar.value));
  const double zero = axis.scale.at(0);
  const double bottom = top + kBarHeight;
  draw_grid(canvas, axis, top);
  canvas.path(box_path(zero, top, axis.scale.at(bar.value), bottom), "c0 area");
  canvas.path(fmt::format("M{}V{}", coordinates(zero, top - 2), coordinate(bottom + 2)), "axis");
  if (bar.range) draw_whisker(canvas, axis, *bar.range, top);
  return bottom;
}

}  // namespace

std::string svg(const Bars& picture) {
  Canvas canvas;
  const Axis axis = axis_of(picture.bars);
  double y = 0;
  for (const Bar& bar : picture.bars) {
    y = draw_bar(canvas, axis, bar, draw_words(canvas, bar, y)) + kBetweenBars;
  }
  const Area area{axis.scale.from, 0, axis.scale.to, y};
  return framed(picture.frame, canvas, draw_lower_axis(canvas, area, axis, picture.unit, false));
}

}  // namespace wattweek::chart
