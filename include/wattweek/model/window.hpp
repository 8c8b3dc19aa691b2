#pragma once
// When something holds: days of the week, hours of the clock, months, dates and holidays,
// all of the local wall clock and calendar of the study's zone.

#include <bitset>
#include <chrono>
#include <cstddef>
#include <optional>
#include <vector>

#include "wattweek/diag/diagnostic.hpp"

namespace wattweek::model {

/// A date of the calendar, without a zone.
using CivilDay = std::chrono::local_days;

/// Bit 0 is Monday, bit 6 Sunday.
using WeekdaySet = std::bitset<7>;
/// Bit 0 is January, bit 11 December.
using MonthSet = std::bitset<12>;

inline const WeekdaySet kEveryDay{0x7F};
inline const MonthSet kEveryMonth{0xFFF};

/// Hours that the wall clock and the calendar name in a week.
inline constexpr std::size_t kHoursOfWeek = 168;

/// Position of a weekday in a `WeekdaySet`.
constexpr unsigned weekday_bit(std::chrono::weekday day) { return day.iso_encoding() - 1; }

/// First and last date, both included; `first <= last`.
struct DateSpan {
  CivilDay first;
  CivilDay last;

  constexpr bool contains(CivilDay day) const { return first <= day && day <= last; }
  friend constexpr bool operator==(const DateSpan&, const DateSpan&) = default;
};

/// Minutes of the clock face, `start` in [0, 1440), `end` in (0, 1440], start included and end
/// excluded. Where `end < start` the span crosses midnight and belongs to the day on which
/// it starts. The two are never equal.
struct HourSpan {
  int start_min = 0;
  int end_min = 1440;

  constexpr bool crosses_midnight() const { return end_min < start_min; }
  /// Length by the clock face, in minutes.
  constexpr int length_min() const {
    return crosses_midnight() ? end_min + 1440 - start_min : end_min - start_min;
  }
  friend constexpr bool operator==(const HourSpan&, const HourSpan&) = default;
};

/// Four filters together. A window holds at an instant when the local clock time lies in one
/// of its hour spans and that span's governing day passes days, months and dates. The
/// governing day is the local date, except for the part after midnight of a span that
/// crosses midnight, where it is the calendar's day before.
struct Window {
  WeekdaySet days = kEveryDay;
  MonthSet months = kEveryMonth;
  std::optional<DateSpan> dates;            ///< Absent: every date.
  std::vector<HourSpan> hours{HourSpan{}};  ///< Never empty; the default is the whole day.
  diag::Place place;                        ///< Where the user wrote it.
};

/// Dates that count as another day of the week in `days` filters.
struct Holidays {
  std::vector<CivilDay> dates;                   ///< Sorted, without repetition.
  std::vector<diag::Place> places;               ///< Where each of the dates was written.
  std::optional<std::chrono::weekday> count_as;  ///< Absent: a holiday is an ordinary day.
};

}  // namespace wattweek::model
