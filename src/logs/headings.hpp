#pragma once
// What the heading of a column says about it.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "wattweek/logs/read_log.hpp"

namespace wattweek::logs {

/// The quantity that a heading names.
enum class Quantity {
  unsaid,   ///< Nothing that we know: "value", "state", a name.
  power,    ///< "power", a unit of W or kW.
  energy,   ///< "energy", "consumption", a unit of Wh or kWh.
  counter,  ///< Of energy, and it runs on: "total", "register", "meter reading".
  other,    ///< Volts, amperes, prices, numbers of rows: never what a fit wants.
};

struct Heading {
  Quantity quantity = Quantity::unsaid;
  std::optional<Unit> unit{};
  bool is_start = false;  ///< A time: the begin of its interval.
  bool is_end = false;    ///< A time: the end of its interval.
  bool is_utc = false;
  bool is_out = false;     ///< Energy that leaves the home.
  bool is_series = false;  ///< Tells devices or kinds of rows apart.
};

Heading heading_of(std::string_view name);

/// The words of a heading, in lower case: "ActivePower_kW" is "active", "power", "kw".
std::vector<std::string> words_of(std::string_view name);

}  // namespace wattweek::logs
