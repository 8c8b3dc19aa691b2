#pragma once
// The time in which a tariff is tried where no study names a year: every weekday in every month,
// leap days, and what its dates and holidays name. Days without clock changes will do, since a
// window asks only what clock and calendar show.

#include <chrono>
#include <vector>

#include "wattweek/model/tariff.hpp"

namespace wattweek::calendar {

/// Some calendar months in a row.
struct Months {
  std::chrono::year_month first;
  int count = 12;
};

/// The 28 years from 2000 on (until 2100 every weekday meets every date within 28 years, leap days
/// included), the years of the tariff's spans of dates, of a long one the first 28 and the last,
/// and those of its holidays. Years that follow each other are one run.
std::vector<Months> years_to_try(const model::Tariff& tariff);

/// The spans of dates in the windows of its bands, each once, in order.
std::vector<model::DateSpan> date_spans(const model::Tariff& tariff);

/// Has every window of every band dates? Then the tariff is silent about all other dates.
bool every_window_has_dates(const model::Tariff& tariff);

}  // namespace wattweek::calendar
