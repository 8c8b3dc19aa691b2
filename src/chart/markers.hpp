#pragma once
// Points that have a name.

#include <optional>
#include <string>
#include <vector>

#include "canvas.hpp"
#include "plot.hpp"
#include "wattweek/chart/lines.hpp"

namespace wattweek::chart {

/// A marker and the place of its label: rows count from the area upwards.
struct Label {
  double x = 0;       ///< Of the vertical line.
  double middle = 0;  ///< Of the label.
  int row = 0;
  std::optional<double> y;  ///< The marker's value.
  std::string words;
};

/// All labels of a picture.
struct Labels {
  std::vector<Label> labels;
  double height = 0;
};

/// Labels over their lines, each in the lowest row that has room for it.
Labels labels_of(const std::vector<Marker>& markers, const Scale& x);

/// Draws lines, rings and labels, the labels' rows from `top` to the area.
void draw_markers(Canvas& canvas, const Area& area, const Labels& labels, double top,
                  const Scale& y);

}  // namespace wattweek::chart
