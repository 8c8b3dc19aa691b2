#pragma once
// Kinds of day, dates and hours in words.

#include <string>
#include <vector>

#include "wattweek/calendar/tariff_walk.hpp"

namespace wattweek::report {

/// `mon`.
std::string weekday_word(unsigned weekday_bit);

/// `jan`.
std::string month_word(unsigned month_bit);

/// `nov to feb`, `mar and jun`; `every month`.
std::string month_words(model::MonthSet months);

/// `mon to fri, nov to feb; sat, sun and holidays (2027-01-01 to 2027-06-30)`.
std::string day_words(const calendar::PricedDays& priced);

/// Minutes of the clock as `07:30`; the end of the day is `24:00`.
std::string clock_words(int minute);

}  // namespace wattweek::report
