#pragma once
// The outside of a picture.

#include "canvas.hpp"
#include "wattweek/chart/frame.hpp"

namespace wattweek::chart {

/// Free space at all edges.
inline constexpr double kMargin = 10;

/// The whole SVG: names for those who cannot see it, style, paper, heading, and below the heading
/// the inside, which is drawn from y = 0 to `height`.
std::string framed(const Frame& frame, const Canvas& inside, double height);

}  // namespace wattweek::chart
