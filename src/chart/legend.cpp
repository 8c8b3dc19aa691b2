#include "legend.hpp"

#include <fmt/format.h>

#include "framed.hpp"
#include "letters.hpp"
#include "parts.hpp"

namespace wattweek::chart {
namespace {

constexpr double kRow = 20;
constexpr double kLine = 17;  // From line to line of one name.
constexpr double kGap = 16;

double mark_width(LegendMark mark) { return mark == LegendMark::box ? 16 : 32; }

struct Legend {
  Canvas& canvas;
  std::string_view prefix;
  LegendMark mark;
  double x = kMargin;
  double top = 0;
};

void draw_mark(Legend& legend, std::size_t series) {
  const double middle = legend.top + kRow / 2;
  const double right = legend.x + mark_width(legend.mark);
  if (legend.mark == LegendMark::box) {
    legend.canvas.path(box_path(legend.x, middle - 7, right, middle + 7), colour_class(series),
                       pattern_fill(legend.prefix, series));
    return;
  }
  legend.canvas.path(fmt::format("M{}H{}", coordinates(legend.x, middle), coordinate(right)),
                     colour_class(series) + " line", dashes(series));
}

void start_row(Legend& legend) {
  legend.x = kMargin;
  legend.top += kRow;
}

void draw_entry(Legend& legend, std::size_t series, const std::string& name) {
  const double indent = mark_width(legend.mark) + 6;
  const double room = kWidth - 2 * kMargin - indent;
  const auto lines = wrapped(name, {room, room, 2}, kSmallSize);
  const double width = indent + text_width(lines.front(), kSmallSize);
  const bool needs_row = lines.size() > 1 || legend.x + width > kWidth - kMargin;
  if (needs_row && legend.x > kMargin) start_row(legend);
  draw_mark(legend, series);
  legend.canvas.text(legend.x + indent, legend.top + 15, lines.front(), "small");
  legend.x += width + kGap;
  if (lines.size() == 1) return;
  legend.top += kLine;
  legend.canvas.text(kMargin + indent, legend.top + 15, lines.back(), "small");
  start_row(legend);
}

}  // namespace

double draw_legend(Canvas& canvas, double top, std::string_view prefix, LegendMark mark,
                   const std::vector<std::string>& names) {
  Legend legend{canvas, prefix, mark, kMargin, top};
  for (std::size_t i = 0; i < names.size(); ++i) draw_entry(legend, i, names[i]);
  if (legend.x > kMargin) start_row(legend);
  return legend.top;
}

}  // namespace wattweek::chart
