#pragma once
// A time zone as data: the list of its changes of UTC offset over the time that matters. The
// engine reckons with this list alone, so that it can be tested with invented zones and run
// where no time zone database exists.

#include <chrono>
#include <string>
#include <vector>

#include "wattweek/model/window.hpp"

namespace wattweek::calendar {

/// A moment, the same for all zones; leap seconds are not counted (POSIX time).
using Instant = std::chrono::sys_seconds;
/// What the wall clock and calendar show.
using LocalTime = std::chrono::local_seconds;

/// From the instant `at` on, local time is UTC plus `utc_offset`.
struct OffsetChange {
  Instant at;
  std::chrono::seconds utc_offset;

  friend bool operator==(const OffsetChange&, const OffsetChange&) = default;
};

/// Changes ascend by instant; before the first of them `first_utc_offset` holds.
struct ZoneRules {
  std::chrono::seconds first_utc_offset{0};
  std::vector<OffsetChange> changes;
};

/// What the clock shows at an instant.
LocalTime local_time(const ZoneRules& zone, Instant instant);

/// The earliest instant whose local date is `day` or later: midnight as a rule, later where the
/// clocks skip midnight, the first pass where they show it twice. For a date that the zone skipped,
/// the first instant after the gap.
Instant first_instant(const ZoneRules& zone, model::CivilDay day);

/// One calendar month of a study: from the first instant of its first date to that of the
/// next month's first date.
struct Month {
  std::chrono::year_month month;
  int days = 0;  ///< Calendar days, a date that the zone skipped included.
  Instant begin;
  Instant end;

  double hours() const { return static_cast<double>((end - begin).count()) / 3600.0; }
};

/// `count` calendar months from `start` on. \pre `zone` covers them, a day more on both sides.
std::vector<Month> calendar_months(const ZoneRules& zone, std::chrono::year_month start, int count);

/// `YYYY-MM-DD HH:MM`, with seconds only where they are not zero.
std::string to_text(LocalTime time);

/// `YYYY-MM-DD`.
std::string to_text(model::CivilDay day);

/// `YYYY-MM`.
std::string to_text(std::chrono::year_month month);

/// First date of a month.
model::CivilDay first_day(std::chrono::year_month month);

}  // namespace wattweek::calendar
