#pragma once
// The picture of a week: a character for each half-hour, darker where more is drawn.

#include <string>

#include "document.hpp"
#include "wattweek/decide/week.hpp"

namespace wattweek::report {

/// Seven lines under a line of hours; the legend says which watts a character stands for.
/// \pre The week is not flat.
Picture week_picture(const decide::Week& week, std::string title);

/// Do the watts show as one and the same all week?
bool is_flat(const decide::Week& week);

}  // namespace wattweek::report
