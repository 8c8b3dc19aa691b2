#pragma once
// The answer from two meter readings and a price, without a file.

namespace wattweek::decide {

struct QuickInput {
  double idle_w = 0;
  double busy_w = 0;
  double busy_hours_a_day = 0;  ///< Of each of 365 days; 0 where all is idle.
  double price_per_kwh = 0;
};

struct QuickResult {
  double energy_kwh = 0;  ///< A year of 365 days, 8760 h.
  double mean_w = 0;
  double cost = 0;
  double one_watt_cost = 0;  ///< Of 1 W all year, 8.76 kWh.
};

/// 365 days, so many hours of each at busy watts and the rest at idle watts, one price.
QuickResult quick(const QuickInput& input);

}  // namespace wattweek::decide
