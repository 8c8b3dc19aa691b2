#pragma once
// The one door to the system's time zone database.

#include <chrono>
#include <string>
#include <variant>
#include <vector>

#include "wattweek/calendar/zone.hpp"

namespace wattweek::calendar {

/// Why a zone cannot be had, in words for the user ("no such time zone ...").
struct NoZone {
  std::string reason;
};

/// The offset changes of the IANA zone `name` from `first` to the end of `last`, with two days more
/// on both sides. Refuses names that are not IANA names (empty parts, dots, a leading slash,
/// private names such as `localtime`) before anything is opened. Reads the system's database, or
/// the one that the environment variable TZDIR names.
std::variant<ZoneRules, NoZone> zone_rules(const std::string& name, std::chrono::year_month first,
                                           int months);

/// All zone names of the database, sorted, for "did you mean"; empty where it cannot be listed.
std::vector<std::string> zone_names();

}  // namespace wattweek::calendar
