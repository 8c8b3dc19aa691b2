#pragma once
// Small logs for tests, with times in seconds since a Monday, 00:00 UTC.

#include <limits>
#include <vector>

#include "wattweek/metering/measuring.hpp"

namespace wattweek::tests {

/// 2025-01-06 00:00 UTC.
inline constexpr logs::Microseconds kMonday_us = 1'736'121'600'000'000;
inline constexpr std::int64_t kMonday_h = kMonday_us / 3'600'000'000;

inline constexpr double kNothing = std::numeric_limits<double>::quiet_NaN();

struct At {
  double s;
  double value;
};

logs::Microseconds monday_plus(double s);
std::vector<logs::Reading> log_of(const std::vector<At>& rows);

inline constexpr logs::Meaning kPower{logs::Kind::power, logs::Stamps::start};
inline constexpr logs::Meaning kEnergyFrom{logs::Kind::energy, logs::Stamps::start};
inline constexpr logs::Meaning kEnergyUntil{logs::Kind::energy, logs::Stamps::end};
inline constexpr logs::Meaning kCounter{logs::Kind::counter, logs::Stamps::start};

/// Measured in three portions.
metering::Measurement measured(const std::vector<logs::Reading>& log, const logs::Meaning& meaning,
                               const metering::MeasuringOptions& options = {});

double energy_wh(const metering::Measurement& measurement);
double hours_of(const metering::Drawn& drawn);
/// By hour since Monday, 00:00 UTC; nothing where it has none.
metering::Drawn hour(const metering::Measurement& measurement, std::int64_t since_monday);

}  // namespace wattweek::tests
