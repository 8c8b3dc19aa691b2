#pragma once
// What a grid of weekdays and months says, in as few kinds of day as can be.

#include <vector>

#include "price_grids.hpp"

namespace wattweek::calendar {

/// The plans that occur, in the order in which days from Monday in January on meet them.
std::vector<std::size_t> plans_in(const PriceGrid& grid);

/// The days on which the plan holds. Sets are full where nothing that occurs is missing.
std::vector<KindOfDay> kinds_of(const PriceGrid& grid, std::size_t plan);

}  // namespace wattweek::calendar
