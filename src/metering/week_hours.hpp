#pragma once
// Hours of the week.

#include <array>
#include <cstdint>

#include "wattweek/metering/forecast.hpp"

namespace wattweek::metering {

inline constexpr std::size_t kHoursOfWeek = 168;

/// Of an hour of the local clock since 1970-01-01 00:00, which was a Thursday: Monday 00:00 is 0.
constexpr std::size_t hour_of_week(std::int64_t local_hour) {
  const std::int64_t since_monday = (local_hour + 72) % 168;
  return static_cast<std::size_t>(since_monday < 0 ? since_monday + 168 : since_monday);
}

static_assert(hour_of_week(0) == 72);     // Thursday
static_assert(hour_of_week(96) == 0);     // Monday, 5 January 1970
static_assert(hour_of_week(-73) == 167);  // Sunday, 28 December 1969, 23:00

/// Time and energy of all weeks together.
std::array<Drawn, kHoursOfWeek> by_hour_of_week(const Measured& measured);

}  // namespace wattweek::metering
