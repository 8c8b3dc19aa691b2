#include "lined.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>

#include "ends.hpp"
#include "framed.hpp"
#include "legend.hpp"
#include "letters.hpp"
#include "markers.hpp"
#include "parts.hpp"
#include "plot.hpp"
#include "wattweek/diag/printable.hpp"

namespace wattweek::chart {
namespace {

constexpr double kPlotHeight = 230;
constexpr double kWidestEnd = 140;  // Longer names go into a legend.
constexpr double kUnitLine = 18;

// What stands at the right ends, and whether it is numbers for the legend.
struct EndNames {
  std::vector<std::string> names;
  double width = 0;
  bool numbered = false;
};

EndNames end_names(const std::vector<Line>& lines) {
  EndNames ends;
  for (const Line& line : lines) ends.names.push_back(diag::printable(line.name));
  for (const std::string& name : ends.names) {
    ends.width = std::max(ends.width, text_width(name, kSmallSize));
  }
  ends.numbered = ends.width > kWidestEnd;
  for (std::size_t i = 0; i < ends.names.size() && ends.numbered; ++i) {
    ends.names[i] = std::to_string(i + 1);
    ends.width = text_width("88", kSmallSize);
  }
  return ends;
}

// There and back along the ranges; nothing for a line without them.
std::string band_path(const std::vector<Point>& points, const Axis& x, const Axis& y) {
  std::string there;
  std::string back;
  for (const Point& point : points) {
    const Range range = point.range.value_or(Range{point.y, point.y});
    const double across = x.scale.at(point.x);
    there += (there.empty() ? "M" : "L") + coordinates(across, y.scale.at(range.high));
    back.insert(0, "L" + coordinates(across, y.scale.at(range.low)));
  }
  const bool any = std::any_of(points.begin(), points.end(),
                               [](const Point& point) { return point.range.has_value(); });
  return any ? there + back + "z" : "";
}

std::string line_path(const std::vector<Point>& points, const Axis& x, const Axis& y) {
  std::string data;
  for (const Point& point : points) {
    data += (data.empty() ? "M" : "L") + coordinates(x.scale.at(point.x), y.scale.at(point.y));
  }
  return data;
}

// The line closed down to zero.
std::string filled_path(const std::vector<Point>& points, const Axis& x, const Axis& y) {
  if (points.empty()) return "";
  const double zero = y.scale.at(0);
  return fmt::format("{}V{}H{}z", line_path(points, x, y), coordinate(zero),
                     coordinate(x.scale.at(points.front().x)));
}

// Everything that drawing needs.
struct Plot {
  Canvas& canvas;
  const Lines& picture;
  Area area;
  Axis x;
  Axis y;
};

void draw_lines(Plot& plot) {
  const std::vector<Line>& lines = plot.picture.lines;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    plot.canvas.path(band_path(lines[i].points, plot.x, plot.y), colour_class(i) + " band");
  }
  for (std::size_t i = 0; i < lines.size(); ++i) {
    plot.canvas.path(line_path(lines[i].points, plot.x, plot.y), colour_class(i) + " line",
                     dashes(i));
  }
}

// A lone dot is all that a line of one point has.
void draw_dots(Plot& plot) {
  const std::vector<Line>& lines = plot.picture.lines;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    if (lines[i].points.size() != 1) continue;
    const Point& point = lines[i].points.front();
    plot.canvas.add(fmt::format("<circle class=\"{} area\" cx=\"{}\" cy=\"{}\" r=\"4\"/>\n",
                                colour_class(i), coordinate(plot.x.scale.at(point.x)),
                                coordinate(plot.y.scale.at(point.y))));
  }
}

std::vector<End> ends_of(const Plot& plot, const EndNames& names) {
  std::vector<End> ends;
  for (std::size_t i = 0; i < names.names.size(); ++i) {
    if (plot.picture.lines[i].points.empty()) continue;
    const Point& last = plot.picture.lines[i].points.back();
    ends.push_back({i, plot.x.scale.at(last.x), plot.y.scale.at(last.y), names.names[i]});
  }
  return ends;
}

// Names with the numbers that stand at the ends.
std::vector<std::string> numbered(const std::vector<Line>& lines) {
  std::vector<std::string> names;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    names.push_back(fmt::format("{}:\u00A0{}", i + 1, lines[i].name));
  }
  return names;
}

Plot plot_of(Canvas& canvas, const Lines& picture, Range xs, Range ys) {
  Plot plot{canvas, picture, {}, {}, {}};
  plot.y.ticks = ticks_up(ys);
  plot.area.left = kMargin + widest_tick(plot.y.ticks) + 6;
  plot.area.right = kWidth - kMargin - 17 - end_names(picture.lines).width;
  // What is read by its place, and not by a length, needs no room beyond the values.
  const Ticks around = ticks_along(xs, plot.area.right - plot.area.left);
  plot.x.ticks = within(around, xs);
  const bool enough = plot.x.ticks.count > 1;
  if (!enough) plot.x.ticks = around;
  plot.x.scale = {enough ? xs : around.range(), plot.area.left, plot.area.right};
  return plot;
}

// Markers' labels stand between the unit and the area, which begins below them.
void place_upright(Plot& plot, double top) {
  const double needed = 1.2 * kEndHeight * static_cast<double>(plot.picture.lines.size());
  plot.area.top = top;
  plot.area.bottom = top + std::max(kPlotHeight, needed);
  plot.y.scale = {plot.y.ticks.range(), plot.area.bottom, plot.area.top};
}

}  // namespace

std::string lined(const Lines& picture, Range xs, Range ys, bool filled) {
  Canvas canvas;
  Plot plot = plot_of(canvas, picture, xs, ys);
  const Labels labels = labels_of(picture.markers, plot.x.scale);
  place_upright(plot, kUnitLine + labels.height + 10);
  draw_left_axis(canvas, plot.area, plot.y, picture.y_unit, 13);
  double bottom = draw_lower_axis(canvas, plot.area, plot.x, picture.x_unit, false);
  if (filled) {
    canvas.path(filled_path(picture.lines.front().points, plot.x, plot.y), "c0 band");
  }
  draw_lines(plot);
  draw_dots(plot);
  draw_markers(canvas, plot.area, labels, kUnitLine, plot.y.scale);
  const EndNames names = end_names(picture.lines);
  draw_ends(canvas, plot.area, ends_of(plot, names));
  if (names.numbered) {
    bottom = draw_legend(canvas, bottom + 6, picture.frame.prefix, LegendMark::line,
                         numbered(picture.lines));
  }
  return framed(picture.frame, canvas, bottom);
}

}  // namespace wattweek::chart
