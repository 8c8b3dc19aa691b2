#pragma once
// A stretch of time with its mean watts: what readings of all kinds become.

#include "wattweek/logs/log.hpp"

namespace wattweek::metering {

inline constexpr logs::Microseconds kSecond_us = 1'000'000;
inline constexpr logs::Microseconds kHour_us = 3600 * kSecond_us;

struct Interval {
  logs::Microseconds start_us = 0;
  logs::Microseconds end_us = 0;
  double watts = 0;

  logs::Microseconds length_us() const { return end_us - start_us; }
};

/// An energy drawn evenly. \pre start_us < end_us
inline Interval drawn_evenly(double energy_wh, logs::Microseconds start_us,
                             logs::Microseconds end_us) {
  constexpr double kWattMicrosecondsOfWh = 3600e6;
  return {start_us, end_us,
          energy_wh * kWattMicrosecondsOfWh / static_cast<double>(end_us - start_us)};
}

inline double in_seconds(logs::Microseconds us) { return static_cast<double>(us) * 1e-6; }

/// The quotient rounded down, also before 1970. \pre by > 0
inline std::int64_t floor_of(std::int64_t what, std::int64_t by) {
  const std::int64_t towards_zero = what / by;
  return what % by < 0 ? towards_zero - 1 : towards_zero;
}

}  // namespace wattweek::metering
