#pragma once
// What `fit` is asked.

#include <optional>
#include <string>
#include <variant>

#include "cli/arguments.hpp"
#include "wattweek/logs/read_log.hpp"
#include "wattweek/metering/fit.hpp"

namespace wattweek::cli {

struct FitRequest {
  std::string log;
  logs::LogOptions options;
  std::string zone_name = "UTC";
  calendar::ZoneRules zone;  ///< Of the week; UTC where none was given.
  std::optional<double> gap_s;
  std::optional<std::string> activity;
  std::optional<metering::MeterError> meter;
  std::optional<std::string> profile;
  std::optional<std::string> tariff;
  bool force = false;
  std::string format;

  bool is_zone_given() const { return options.zone.has_value(); }
};

/// The request that the words make, or why they make none.
std::variant<FitRequest, Misuse> fit_request(const Arguments& arguments);

}  // namespace wattweek::cli
