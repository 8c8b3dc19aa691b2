#pragma once
// The file beside a log that notes when which workload was in use: a table with the headings
// `workload`, `start`, `end` and, if there is more than one unit, `units`.

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "wattweek/calendar/zone.hpp"
#include "wattweek/diag/diagnostic.hpp"
#include "wattweek/logs/log.hpp"
#include "wattweek/logs/read_log.hpp"

namespace wattweek::logs {

/// So many units of a workload in use over [start_us, end_us).
struct ActivityRow {
  std::string workload;
  Microseconds start_us = 0;
  Microseconds end_us = 0;
  double units = 1;
};

/// How an activity file is to be understood where it does not say.
struct ActivityOptions {
  std::optional<calendar::ZoneRules> zone{};  ///< Of times that name none.
  std::optional<DateOrder> date_order{};      ///< Of dates in numbers.
};

/// Reads all rows, or says all that is wrong with them, up to 50 mistakes. A time may be a date and
/// clock time in any form that a log has, or a number since 1970.
std::variant<std::vector<ActivityRow>, std::vector<diag::Diagnostic>> read_activity(
    const LogFile& file, const ActivityOptions& options);

}  // namespace wattweek::logs
