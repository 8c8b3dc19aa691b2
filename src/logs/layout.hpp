#pragma once
// How a log is laid out: all that must be known to read its rows one by one.

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "numbers.hpp"
#include "wattweek/logs/read_log.hpp"

namespace wattweek::logs {

/// Where the time of a row stands, and how it is written.
struct TimeLayout {
  std::size_t column = 0;
  std::optional<std::size_t> clock_column{};  ///< Where date and clock time stand apart.
  bool epoch = false;                         ///< A number since 1970.
  bool names_zone = false;                    ///< UTC or an offset is in each stamp.
  bool is_utc = false;                        ///< The heading says so.
  DateOrder order = DateOrder::ymd;           ///< Of dates in numbers.
};

struct Layout {
  char delimiter = ',';
  std::uint64_t first_line = 1;    ///< Of the data.
  std::vector<std::string> names;  ///< Headings; empty: there are none.
  TimeLayout time;
  std::size_t value_column = 1;
  NumberStyle style;
  Unit unit = Unit::w;
  std::optional<std::pair<std::size_t, std::string>> where{};  ///< Rows that are kept.
  bool where_is_all = false;  ///< Nobody asked: all rows are such; another one is a contradiction.
  Meaning meaning;
  bool newest_first = false;
};

/// Watts or watt-hours of one of the unit.
double factor_of(Unit unit);
bool is_power(Unit unit);
std::string_view name_of(Unit unit);

}  // namespace wattweek::logs
