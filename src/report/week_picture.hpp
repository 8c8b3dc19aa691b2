#pragma once
// The picture of a week: a character for each half-hour, darker where more is drawn.

#include <string>

#include "document.hpp"
#include "wattweek/decide/week.hpp"

namespace wattweek::report {

/// Seven lines under a line of hours; the legend says which watts a character stands for.
/// \pre The week is not flat.
Picture week_picture(const decide::Week& week, std::string title);

/// The same of mean watts by hour (days x 24): each hour two characters wide, or one. A NaN is an
/// hour that nobody knows. \pre Not all are NaN, and they are not all the same.
Picture hours_picture(const Eigen::MatrixXd& mean_w, std::string title);

/// Do the watts show as one and the same all week?
bool is_flat(const decide::Week& week);

}  // namespace wattweek::report
