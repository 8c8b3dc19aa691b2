#pragma once
// The days that a tariff's fold meets, each with what tells it from others.

#include <vector>

#include "wattweek/calendar/tariff_walk.hpp"

namespace wattweek::calendar {

/// What a date is.
struct DayMarks {
  unsigned weekday = 0;  // As in a `WeekdaySet`, the calendar's own.
  unsigned month = 0;    // As in a `MonthSet`.
  bool is_holiday = false;
  std::vector<bool> spans;  // Which of the spans of dates it lies in.
};

/// One of the days that are alike, and so is the day before each.
struct WalkedDay {
  DayMarks today;
  DayMarks yesterday;
  model::CivilDay first;
  std::vector<Stretch> stretches;
};

std::vector<WalkedDay> walked_days(const model::Tariff& tariff,
                                   const std::vector<model::DateSpan>& spans);

}  // namespace wattweek::calendar
