#pragma once
// The little languages of windows: days, months, hours and dates, as texts.

#include <chrono>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "wattweek/model/window.hpp"

namespace wattweek::read {

/// `value` is set if and only if `problem` is empty.
template <class T>
struct Parsed {
  std::optional<T> value;
  std::string problem;
};

/// `mon`, `fri-sun,tue`, `sat-mon` (wraps), `all`.
Parsed<model::WeekdaySet> parse_days(std::string_view text);

/// `jan`, `nov-feb` (wraps), `apr,oct-dec`, `all`.
Parsed<model::MonthSet> parse_months(std::string_view text);

/// `22:00-06:00,12:00-24:00`.
Parsed<std::vector<model::HourSpan>> parse_hours(std::string_view text);

/// `2027-06-01..2027-06-14`.
Parsed<model::DateSpan> parse_dates(std::string_view text);

/// One day of the week: `sun`.
Parsed<std::chrono::weekday> parse_weekday(std::string_view text);

}  // namespace wattweek::read
