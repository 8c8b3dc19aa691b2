#pragma once
// Walked days sorted: for each stretch of dates a grid of weekdays and months.

#include <array>
#include <map>
#include <optional>
#include <vector>

#include "walked_days.hpp"

namespace wattweek::calendar {

/// Ordinary days Monday to Sunday, then holidays that fall on Monday to Sunday.
inline constexpr std::size_t kDayClasses = 14;

/// Which plan of the day holds; nothing where such a day never occurs.
using PriceGrid = std::array<std::array<std::optional<std::size_t>, 12>, kDayClasses>;

struct PriceGrids {
  std::vector<std::vector<Stretch>> plans;
  std::map<std::vector<bool>, PriceGrid> by_spans;  // By the spans of dates that hold.
  CarriedOver carried_over;
};

PriceGrids price_grids(std::vector<WalkedDay> days);

}  // namespace wattweek::calendar
