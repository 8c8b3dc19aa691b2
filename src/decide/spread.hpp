#pragma once
// What the draws of one figure came to.

#include <vector>

#include "wattweek/decide/uncertainty.hpp"

namespace wattweek::decide {

/// \pre At least two values, in the order of the draws.
Spread spread_of(std::vector<double> values);

}  // namespace wattweek::decide
