#pragma once
// Candidates side by side: one number each, with the range that it may well be in.

#include <optional>
#include <string>
#include <vector>

#include "wattweek/chart/axis.hpp"
#include "wattweek/chart/frame.hpp"

namespace wattweek::chart {

/// One candidate's bar.
struct Bar {
  std::string name;
  double value = 0;
  std::optional<Range> range;  ///< A whisker from low to high.
  std::string value_text;      ///< The number as people say it, with its range: drawn as it is.
};

/// Horizontal bars from zero, the first on top. All share one scale and one colour: what differs
/// is told by name and length.
struct Bars {
  Frame frame;
  std::string unit;  ///< Below the axis: what the bars measure, with currency or unit.
  std::vector<Bar> bars;
};

/// Draws the bars: over each its name on at most two lines (too long a name has "…" within) and
/// its number, below all an axis that holds zero. Values below zero reach to the left.
/// \pre numbers finite, low <= high; a value text takes less than half the width (some 25 letters).
std::string svg(const Bars& picture);

}  // namespace wattweek::chart
