#pragma once
// The walk through a tariff by itself: which band holds at which hours, on which kinds of day.
// Every weekday, month, holiday and span of dates is met (`years_to_try`); days on which the same
// bands hold at the same hours are one kind.

#include <compare>
#include <cstdint>
#include <optional>
#include <vector>

#include "wattweek/calendar/fold.hpp"
#include "wattweek/model/tariff.hpp"

namespace wattweek::calendar {

/// Tariffs with more distinct spans of dates than this are not walked.
inline constexpr std::size_t kMostDateSpans = 400;

/// A part of a day, in minutes of its clock, in one band (`kNoBand` where none holds).
struct Stretch {
  int begin_min = 0;
  int end_min = 1440;
  std::uint32_t band = 0;

  friend auto operator<=>(const Stretch&, const Stretch&) = default;
};

/// Dates in a row, both ends included; an end that is absent is open.
struct DateRun {
  std::optional<model::CivilDay> first;
  std::optional<model::CivilDay> last;

  friend bool operator==(const DateRun&, const DateRun&) = default;
};

/// These days in these months. Holidays are those dates that count as another weekday.
struct KindOfDay {
  model::WeekdaySet days;         ///< Days that are no holidays.
  model::WeekdaySet holidays_on;  ///< Holidays, by the weekday on which they fall.
  model::MonthSet months;

  friend bool operator==(const KindOfDay&, const KindOfDay&) = default;
};

/// Days that are priced alike. Sets are full where nothing that occurs is missing.
struct PricedDays {
  std::vector<KindOfDay> kinds;
  std::vector<DateRun> dates;  ///< Empty: all that the tariff speaks of.
  std::vector<Stretch> stretches;
};

/// Hours over midnight belong to the day on which they start. So these days begin as the day before
/// goes on, other than the rest of their kind.
struct CarriedOver {
  int until_min = 0;  ///< Minute of the day after which all is as ever; 0: there are none.
  model::MonthSet first_of;
  bool after_holidays = false;
  std::vector<model::CivilDay> dates;  ///< Where a span of dates begins or has ended.
};

struct TariffWalk {
  std::vector<PricedDays> days;  ///< Empty only beyond `kMostDateSpans`.
  CarriedOver carried_over;
};

/// Are the holidays that the tariff's prices count those of whatever study names it?
bool counts_holidays_of_study(const model::Tariff& tariff);

/// Walks a tariff. Where the holidays are the study's, some are assumed on every weekday in every
/// month; on these, and only on these and on dates of which the tariff is silent, no band may hold.
TariffWalk walk(const model::Tariff& tariff);

}  // namespace wattweek::calendar
