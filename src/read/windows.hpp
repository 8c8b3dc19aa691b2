#pragma once
// The keys of a window, alone and together, and holidays.

#include <optional>
#include <vector>

#include "table.hpp"
#include "wattweek/model/window.hpp"

namespace wattweek::read {

/// The four filters of a table; each that is absent passes everything.
model::Window read_window(const Table& table);

/// Is one of the four filters given?
bool has_window_keys(const Table& table);

/// `months` as a filter; every month where it is absent.
model::MonthSet read_month_filter(const Table& table);

/// `dates` as a span of dates.
std::optional<model::DateSpan> read_date_span(const Value& value);
inline constexpr std::string_view kDatesAccepted =
    "first and last date, such as \"2027-06-01..2027-06-14\"";

/// The `holidays` and `holidays_as` of a study or a tariff.
struct HolidayList {
  model::Holidays holidays;
  bool is_given = false;  ///< The key `holidays` is there, be it empty.
};
HolidayList read_holidays(const Table& table);

}  // namespace wattweek::read
