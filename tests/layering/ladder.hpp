#pragma once
// The ladder of rooms and the doors for everything that is not ours. This is the one place that
// says who may include what; layering_test.cpp holds every #include against it.

#include <array>
#include <string_view>
#include <vector>

namespace wattweek::layering {

/// A room may include itself and every room on a lower level: never up, never sideways.
struct Room {
  std::string_view name;
  int level;
  std::string_view only_for = "";  ///< Where set: the one room above that may include it.
};

inline constexpr std::array<Room, 14> kLadder = {{
    {"units", 0},
    {"diag", 0},
    {"chart", 1},
    {"model", 1},
    {"calendar", 2},
    {"read", 3, "cli"},  // What computes and what reports takes a model as given.
    {"logs", 3},
    {"power", 3},
    {"metering", 4},
    {"energy", 4},
    {"billing", 5},
    {"decide", 6},
    {"report", 7},
    {"cli", 8},
}};

/// A header, or a folder of headers, that only the files below these paths may include.
struct Door {
  std::string_view header;
  std::vector<std::string_view> files;
};

inline const std::vector<Door> kDoors = {
    // Libraries. Eigen alone may appear in a public header.
    {"Eigen/",
     {"include/wattweek/calendar/", "include/wattweek/power/", "include/wattweek/energy/",
      "include/wattweek/billing/", "include/wattweek/decide/", "include/wattweek/metering/",
      "src/calendar/", "src/power/", "src/energy/", "src/billing/", "src/decide/",
      "src/metering/"}},
    {"absl/time/", {"src/calendar/zone_database.cpp"}},
    {"boost/program_options", {"src/cli/"}},
    {"boost/math/", {"src/decide/crossings.cpp", "src/metering/forecast.cpp"}},
    {"boost/random/", {"src/decide/points.cpp"}},
    {"fmt/", {"src/diag/", "src/chart/", "src/report/", "src/cli/"}},
    {"nlohmann/", {"src/report/json"}},
    {"simdjson.h", {"src/logs/json_"}},
    {"toml++/", {"src/read/"}},
    {"zlib.h", {"src/logs/gunzip.cpp"}},
    // The outside world. The library never prints, and asks the system for time zones only.
    {"fcntl.h", {"src/cli/"}},
    {"filesystem", {"src/cli/"}},
    {"fstream", {"src/calendar/zone_database.cpp", "src/cli/"}},
    {"iostream", {"src/cli/"}},
    {"spawn.h", {"src/cli/png.cpp"}},
    {"sys/", {"src/cli/"}},
    {"unistd.h", {"src/cli/"}},
};

}  // namespace wattweek::layering
