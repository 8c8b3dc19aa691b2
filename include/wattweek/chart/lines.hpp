#pragma once
// What depends on what: each candidate's present cost over the price of electricity.

#include <optional>
#include <string>
#include <vector>

#include "wattweek/chart/axis.hpp"
#include "wattweek/chart/frame.hpp"

namespace wattweek::chart {

/// One point of a line, with the range that its value may well be in.
struct Point {
  double x = 0;
  double y = 0;
  std::optional<Range> range;
};

/// One candidate's line.
struct Line {
  std::string name;
  std::vector<Point> points;  ///< In order of x.
};

/// A point of the plane that has a name: where two candidates cross, the price of today.
struct Marker {
  double x = 0;
  std::optional<double> y;  ///< With it a ring; without it the vertical line alone.
  std::string label;
};

/// Lines in one pair of axes.
struct Lines {
  Frame frame;
  std::string x_unit;       ///< Below the lower axis: what x is, with its unit.
  std::string y_unit;       ///< Over the left axis: what y is, with its unit or currency.
  bool y_from_zero = true;  ///< False where the lines lie close together far from zero.
  std::vector<Line> lines;
  std::vector<Marker> markers;
};

/// Draws each line with a colour and dashes of its own, its ranges as a band around it, and its
/// name at its right end. Where a name is too long for that, the ends bear numbers and a legend
/// below has the names. Each marker is a thin vertical line with its label above, a ring at `y`.
/// \pre finite, low <= high.
std::string svg(const Lines& picture);

}  // namespace wattweek::chart
