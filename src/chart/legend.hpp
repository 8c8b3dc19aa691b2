#pragma once
// Names for what is drawn.

#include <string>
#include <string_view>
#include <vector>

#include "canvas.hpp"

namespace wattweek::chart {

/// How a series is drawn in the plot, and so in its legend.
enum class LegendMark {
  box,   ///< Colour and pattern.
  line,  ///< Colour and dashes.
};

/// One entry for each name, series 0 first, side by side where they fit, a long name on two lines
/// of its own. Returns where the legend ends.
double draw_legend(Canvas& canvas, double top, std::string_view prefix, LegendMark mark,
                   const std::vector<std::string>& names);

}  // namespace wattweek::chart
