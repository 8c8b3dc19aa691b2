#pragma once
// Axes: marks, their numbers, thin lines behind what is drawn, and the unit.

#include <string>
#include <string_view>

#include "canvas.hpp"
#include "wattweek/chart/axis.hpp"

namespace wattweek::chart {

/// The part of the picture that values are drawn in.
struct Area {
  double left = 0;
  double top = 0;
  double right = 0;
  double bottom = 0;
};

/// One axis: its marks and where they are.
struct Axis {
  Ticks ticks;
  Scale scale;
};

/// The middle of a text of this width, moved where the text would leave the picture.
double kept_inside(double middle, double width);

/// The number at mark `i`.
std::string tick_text(const Ticks& ticks, int i);

/// The width of the widest number of an axis.
double widest_tick(const Ticks& ticks);

/// As many marks as have room for their numbers side by side on so much length, at most 8.
Ticks ticks_along(Range values, double length);

/// Marks for an axis upwards.
Ticks ticks_up(Range values);

/// The lower axis: numbers below the marks, the unit below them. `grid` as well: thin lines
/// upwards. Returns where it ends.
double draw_lower_axis(Canvas& canvas, const Area& area, const Axis& axis, std::string_view unit,
                       bool grid);

/// The left axis with thin lines to the right, and its unit over it, its base line at `unit_y`.
void draw_left_axis(Canvas& canvas, const Area& area, const Axis& axis, std::string_view unit,
                    double unit_y);

}  // namespace wattweek::chart
