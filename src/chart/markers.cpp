#include "markers.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "framed.hpp"
#include "letters.hpp"

namespace wattweek::chart {
namespace {

constexpr double kRow = 17;

// The first row whose labels all keep clear of one from `left` to `right`; noted as taken there.
int row_for(std::vector<std::vector<Range>>& rows, const Range& extent) {
  const auto clear = [&](const std::vector<Range>& row) {
    return std::none_of(row.begin(), row.end(), [&](const Range& taken) {
      return extent.low < taken.high && taken.low < extent.high;
    });
  };
  auto row = std::find_if(rows.begin(), rows.end(), clear);
  if (row == rows.end()) row = rows.emplace(rows.end());
  row->push_back(extent);
  return static_cast<int>(row - rows.begin());
}

}  // namespace

Labels labels_of(const std::vector<Marker>& markers, const Scale& x) {
  Labels all;
  std::vector<std::vector<Range>> rows;
  for (const Marker& marker : markers) {
    Label label{x.at(marker.x), 0, 0, marker.y, {}};
    label.words = shortened(marker.label, kWidth - 2 * kMargin, kSmallSize);
    const double half = text_width(label.words, kSmallSize) / 2;
    label.middle = kept_inside(label.x, 2 * half);
    label.row = row_for(rows, {label.middle - half - 6, label.middle + half + 6});
    all.labels.push_back(label);
  }
  all.height = kRow * static_cast<double>(rows.size());
  return all;
}

void draw_markers(Canvas& canvas, const Area& area, const Labels& labels, double top,
                  const Scale& y) {
  const auto base_of = [&](const Label& label) { return top + labels.height - kRow * label.row; };
  for (const Label& label : labels.labels) {
    canvas.path(
        fmt::format("M{}V{}", coordinates(label.x, base_of(label) + 1), coordinate(area.bottom)),
        "marker", "stroke-dasharray=\"2 2\"");
    if (!label.y) continue;
    canvas.add(fmt::format("<circle class=\"ring\" cx=\"{}\" cy=\"{}\" r=\"5\"/>\n",
                           coordinate(label.x), coordinate(y.at(*label.y))));
  }
  // After all lines, which a label of a lower row may have to hide.
  for (const Label& label : labels.labels) {
    canvas.text(label.middle, base_of(label) - 4, label.words, "small mid over");
  }
}

}  // namespace wattweek::chart
