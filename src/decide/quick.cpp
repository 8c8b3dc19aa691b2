#include "wattweek/decide/quick.hpp"

namespace wattweek::decide {

QuickResult quick(const QuickInput& input) {
  constexpr double kDays = 365;
  constexpr double kHours = kDays * 24;
  const double busy_hours = kDays * input.busy_hours_a_day;
  const double watt_hours = input.idle_w * (kHours - busy_hours) + input.busy_w * busy_hours;
  const double energy_kwh = watt_hours / 1000;
  return {energy_kwh, watt_hours / kHours, energy_kwh * input.price_per_kwh,
          kHours / 1000 * input.price_per_kwh};
}

}  // namespace wattweek::decide
