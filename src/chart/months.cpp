#include "wattweek/chart/months.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cassert>
#include <cmath>

#include "framed.hpp"
#include "legend.hpp"
#include "letters.hpp"
#include "parts.hpp"
#include "plot.hpp"
#include "stack.hpp"
#include "wattweek/chart/palette.hpp"
#include "wattweek/diag/number_text.hpp"

namespace wattweek::chart {
namespace {

static_assert(StackedMonths::kMostParts == kSeriesColours);

constexpr double kPlotTop = 40;  // Below the unit and the sums.
constexpr double kPlotHeight = 220;

using Places = std::vector<std::vector<Range>>;

// Everything that drawing needs.
struct Columns {
  Canvas& canvas;
  const StackedMonths& picture;
  std::vector<Part> parts;
  Places places;
  std::vector<double> sums;
  Area area;
  Axis y;

  double pitch() const {
    const double months = static_cast<double>(std::max<std::size_t>(picture.months.size(), 1));
    return (area.right - area.left) / months;
  }
  double middle(std::size_t month) const {
    return area.left + pitch() * (static_cast<double>(month) + 0.5);
  }
};

Range reach(const Places& places) {
  Range range;
  for (const auto& part : places) {
    for (const Range& place : part) {
      range = {std::min(range.low, place.low), std::max(range.high, place.high)};
    }
  }
  return range;
}

// Digits that tell sums apart: three of the largest.
int digits_for(const Range& range) {
  const double largest = std::max(range.high, -range.low);
  return largest >= 100 ? 0 : largest >= 10 ? 1 : 2;
}

void draw_part(Columns& columns, std::size_t part) {
  const double half = std::max(columns.pitch() * 0.38, 0.5);
  std::string data;
  for (std::size_t m = 0; m < columns.picture.months.size(); ++m) {
    const Range& place = columns.places[part][m];
    if (place.low == place.high) continue;
    const double x = columns.middle(m);
    data +=
        box_path(x - half, columns.y.scale.at(place.high), x + half, columns.y.scale.at(place.low));
  }
  columns.canvas.path(data, colour_class(part) + " part",
                      pattern_fill(columns.picture.frame.prefix, part));
}

// Every so many months have room for such texts.
std::size_t stride(const std::vector<std::string>& texts, double pitch) {
  double widest = 0;
  for (const std::string& text : texts) widest = std::max(widest, text_width(text, kSmallSize));
  return static_cast<std::size_t>(std::ceil((widest + 4) / pitch));
}

void draw_month_names(Columns& columns) {
  std::vector<std::string> names;
  for (const std::string& month : columns.picture.months) {
    names.push_back(shortened(month, kWidth / 4, kSmallSize));
  }
  const std::size_t step = std::max<std::size_t>(stride(names, columns.pitch()), 1);
  for (std::size_t m = 0; m < names.size(); m += step) {
    const double x = kept_inside(columns.middle(m), text_width(names[m], kSmallSize));
    columns.canvas.text(x, columns.area.bottom + 18, names[m], "small mid");
  }
}

// Over the columns, where there is room over each.
void draw_sums(Columns& columns) {
  const int digits = digits_for(reach(columns.places));
  std::vector<std::string> texts;
  for (const double sum : columns.sums) texts.push_back(diag::fixed(sum, digits));
  if (stride(texts, columns.pitch()) > 1) return;
  for (std::size_t m = 0; m < texts.size(); ++m) {
    double top = 0;
    for (const auto& part : columns.places) top = std::max(top, part[m].high);
    columns.canvas.text(columns.middle(m), columns.y.scale.at(top) - 5, texts[m], "small mid over");
  }
}

// Long names stand in the legend; repeated for each month they would take many bytes.
std::string name_under_pointer(const std::string& name) {
  return isolated(shortened(name, kWidth / 3, kSmallSize));
}

void draw_hovers(Columns& columns) {
  const int digits = digits_for(reach(columns.places)) + 1;
  for (std::size_t m = 0; m < columns.picture.months.size(); ++m) {
    std::string title = name_under_pointer(columns.picture.months[m]) + ": ";
    for (const Part& part : columns.parts) {
      title += fmt::format("{} {}; ", name_under_pointer(part.name),
                           diag::rounded(part.values[m], digits));
    }
    title += fmt::format("in all {}", diag::rounded(columns.sums[m], digits));
    const double half = columns.pitch() / 2;
    columns.canvas.hover(columns.middle(m) - half, columns.area.top, columns.middle(m) + half,
                         columns.area.bottom, title);
  }
}

void draw_zero(Columns& columns) {
  const double zero = columns.y.scale.at(0);
  columns.canvas.path(
      fmt::format("M{}H{}", coordinates(columns.area.left, zero), coordinate(columns.area.right)),
      "axis");
}

Columns columns_of(Canvas& canvas, const StackedMonths& picture) {
  const std::size_t months = picture.months.size();
  Columns columns{canvas, picture, merged(picture.parts, picture.kMostParts), {}, {}, {}, {}};
  columns.places = stacked(columns.parts, months);
  columns.sums = sums(columns.parts, months);
  columns.y.ticks = ticks_up(reach(columns.places));
  columns.area = {kMargin + widest_tick(columns.y.ticks) + 8, kPlotTop, kWidth - kMargin,
                  kPlotTop + kPlotHeight};
  columns.y.scale = {columns.y.ticks.range(), columns.area.bottom, columns.area.top};
  return columns;
}

void draw_columns(Columns& columns) {
  draw_left_axis(columns.canvas, columns.area, columns.y, columns.picture.unit, 13);
  for (std::size_t part = 0; part < columns.parts.size(); ++part) draw_part(columns, part);
  draw_zero(columns);
  draw_month_names(columns);
  draw_sums(columns);
  draw_hovers(columns);
}

}  // namespace

std::string svg(const StackedMonths& picture) {
  Canvas canvas;
  Columns columns = columns_of(canvas, picture);
  canvas.add(pattern_definitions(picture.frame.prefix, columns.parts.size()));
  draw_columns(columns);
  std::vector<std::string> names;
  for (const Part& part : columns.parts) names.push_back(part.name);
  const double bottom =
      draw_legend(canvas, columns.area.bottom + 28, picture.frame.prefix, LegendMark::box, names);
  return framed(picture.frame, canvas, bottom);
}

}  // namespace wattweek::chart
