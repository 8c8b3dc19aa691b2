#include "logs.hpp"

#include <cmath>
#include <span>

namespace wattweek::tests {

logs::Microseconds monday_plus(double s) { return kMonday_us + std::llround(s * 1e6); }

std::vector<logs::Reading> log_of(const std::vector<At>& rows) {
  std::vector<logs::Reading> log;
  for (const At& row : rows) log.push_back({monday_plus(row.s), row.value});
  return log;
}

metering::Measurement measured(const std::vector<logs::Reading>& log, const logs::Meaning& meaning,
                               const metering::MeasuringOptions& options) {
  metering::Measuring measuring(options);
  measuring.begin({});  // What comes before the last begin is void.
  measuring.take(std::vector<logs::Reading>{{0, 7}, {1'000'000, 8}});
  measuring.begin(meaning);
  const std::span<const logs::Reading> all(log);
  const std::size_t third = all.size() / 3;
  measuring.take(all.first(third));
  measuring.take(all.subspan(third, third));
  measuring.take(all.subspan(2 * third));
  return measuring.finish();
}

double energy_wh(const metering::Measurement& measurement) {
  return measurement.measured.kept.joules / 3600;
}

double hours_of(const metering::Drawn& drawn) { return drawn.seconds / 3600; }

metering::Drawn hour(const metering::Measurement& measurement, std::int64_t since_monday) {
  const auto& all = measurement.measured;
  const std::int64_t at = kMonday_h + since_monday - all.first_hour;
  if (at < 0 || at >= static_cast<std::int64_t>(all.hours.size())) return {};
  return all.hours[static_cast<std::size_t>(at)];
}

}  // namespace wattweek::tests
