#pragma once
// Where and when a study begins: `--zone` and `--start`, or what the machine itself says.

#include <chrono>
#include <optional>
#include <string>
#include <variant>

#include "cli/arguments.hpp"

namespace wattweek::cli {

/// The zone that this machine lives in: the one that `tz` (the variable TZ; may be null) names, or
/// in whose file the link `local_time` ends. Nothing where neither names one that exists.
std::optional<std::string> zone_of_machine(const char* tz, const std::string& local_time);

/// Where a figure comes from.
enum class Source { given, machine, guess };

struct PlaceAndTime {
  std::string zone;
  Source zone_source = Source::guess;
  std::chrono::year_month start;
  bool is_start_given = false;
};

/// Without `--start` the calendar year in which `today` lies.
std::variant<PlaceAndTime, Misuse> place_and_time_of(const Arguments& arguments,
                                                     std::chrono::year_month_day today);

}  // namespace wattweek::cli
