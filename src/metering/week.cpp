#include "week_hours.hpp"

namespace wattweek::metering {

std::array<Drawn, kHoursOfWeek> by_hour_of_week(const Measured& measured) {
  std::array<Drawn, kHoursOfWeek> sums{};
  std::int64_t hour = measured.first_hour;
  for (const Drawn& drawn : measured.hours) {
    Drawn& sum = sums[hour_of_week(hour++)];
    sum.seconds += drawn.seconds;
    sum.joules += drawn.joules;
  }
  return sums;
}

Week week_of(const Measured& measured) {
  Week week;
  std::size_t hour = 0;
  for (const Drawn& drawn : by_hour_of_week(measured)) {
    if (drawn.seconds > 0) week[hour] = drawn.mean_w();
    ++hour;
  }
  return week;
}

}  // namespace wattweek::metering
