#pragma once
// The second reckoning: every interval in a list, whatever it takes.

#include <map>
#include <vector>

#include "logs.hpp"

namespace wattweek::tests {

struct SlowInterval {
  double start_s;  ///< Since the log's first stamp.
  double end_s;
  double watts;
  bool by_hour = true;  ///< Counts by hour, by watts and in parcels.

  double seconds() const { return end_s - start_s; }
};

struct SlowSums {
  double gap_s = 0;
  std::size_t restarts = 0;
  std::vector<SlowInterval> kept;  ///< In order of time.
};

/// As `metering::Measuring` has it, of a log that is not change-only.
SlowSums slow_sums(const std::vector<logs::Reading>& log, const logs::Meaning& meaning,
                   std::optional<double> gap_s);

/// Seconds and joules by hour of the local clock, walked second by second.
std::map<std::int64_t, metering::Drawn> slow_hours(const SlowSums& sums,
                                                   logs::Microseconds first_us,
                                                   const calendar::ZoneRules& zone);

double slow_longest_zero_s(const SlowSums& sums);

}  // namespace wattweek::tests
