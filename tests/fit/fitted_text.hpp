#pragma once
// A log and an activity file as texts, read, measured and fitted as the program does it.

#include <optional>
#include <string>

#include "wattweek/calendar/zone.hpp"
#include "wattweek/logs/read_log.hpp"
#include "wattweek/metering/fitting.hpp"
#include "wattweek/metering/measuring.hpp"

namespace wattweek::tests {

struct FittedText {
  logs::LogReport report;
  metering::Measurement measurement;
  metering::Activity activity;
  metering::Fit fit;
  std::string problems;  ///< Of either text, a line each.
};

/// The clock is UTC's where no zone is given. An empty activity is none. The gap is what the log
/// asks for, where none is given.
FittedText fitted_text(const std::string& log, const std::string& activity = {},
                       const logs::LogOptions& options = {}, std::optional<double> gap_s = {});

logs::LogFile text_file(const std::string& name, const std::string& text);

}  // namespace wattweek::tests
