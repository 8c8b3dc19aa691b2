#pragma once
// When which workload was in use, as somebody noted it beside the meter.

#include <string>
#include <vector>

#include "wattweek/logs/activity_rows.hpp"
#include "wattweek/logs/log.hpp"

namespace wattweek::metering {

/// So many units of a workload in use over [start_us, end_us). Uses of one workload that overlap
/// add up.
struct NotedUse {
  std::size_t workload = 0;  ///< Index in `Activity::workloads`.
  logs::Microseconds start_us = 0;
  logs::Microseconds end_us = 0;
  double units = 1;
};

struct Activity {
  std::vector<std::string> workloads;  ///< In the order in which they are first named.
  std::vector<NotedUse> uses;
};

/// Rows of an activity file, with each workload's name once.
Activity activity_of(const std::vector<logs::ActivityRow>& rows);

}  // namespace wattweek::metering
