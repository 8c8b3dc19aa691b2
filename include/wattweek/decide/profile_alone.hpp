#pragma once
// What a profile says by itself: without a study nobody uses the machine, and without a contract
// a kilowatt-hour has no price.

#include <cstddef>
#include <vector>

#include "wattweek/model/profile.hpp"
#include "wattweek/units/quantity.hpp"
#include "wattweek/units/range.hpp"

namespace wattweek::decide {

/// An amount at a plain price per kWh, in whatever the price is in.
struct PlainCost {
  double price_per_kwh = 0;
  units::Range<double> cost;
};

/// Watts around the clock for a year of 365 days, 8760 h.
struct YearOfWatts {
  units::Range<double> energy_kwh;
  std::vector<PlainCost> costs;  ///< At 0.10, 0.20, 0.30 and 0.40 per kWh.
};

YearOfWatts year_of(const model::PowerRange& watts);

/// What a week of watts comes to.
struct WeekOverview {
  units::Power mean;             ///< Of the 168 hours, each counted once.
  std::size_t lowest_hour = 0;   ///< The first in which no other draws less, and ...
  std::size_t highest_hour = 0;  ///< ... more; see `model::WeekOfWatts`.
};

WeekOverview overview_of(const model::WeekOfWatts& week);

/// Watts above idle that the first unit in use adds, the group's not counted: the midpoint of each
/// figure, before any cap. For each of the profile's increments, in its order.
std::vector<units::Power> added_by_first_unit(const model::Profile& profile);

}  // namespace wattweek::decide
