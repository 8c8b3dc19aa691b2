#include "wattweek/calendar/zone.hpp"

#include <doctest/doctest.h>

#include "zones.hpp"

using namespace wattweek;
using namespace wattweek::tests;
using namespace std::chrono_literals;

// Sources of this file: IANA time zone database as listed by an independent reader (Python
// zoneinfo, Debian tzdata 2026f). Dates of 2026 and later stand only for zones whose rules did
// not change between releases 2025b and 2026f.

TEST_CASE("clock changes make odd days") {
  CHECK(hours_of(zone("Europe/Berlin", 2026), date(2026, 3, 29)) == 23);
  CHECK(hours_of(zone("Europe/Berlin", 2026), date(2026, 10, 25)) == 25);
  CHECK(hours_of(zone("Europe/Dublin", 2026), date(2026, 3, 29)) == 23);
  CHECK(hours_of(zone("America/New_York", 2026), date(2026, 11, 1)) == 25);
  CHECK(hours_of(zone("Australia/Lord_Howe", 2026), date(2026, 4, 5)) == 24.5);
  CHECK(hours_of(zone("Australia/Lord_Howe", 2026), date(2026, 10, 4)) == 23.5);
  CHECK(hours_of(zone("Antarctica/Troll", 2026), date(2026, 3, 29)) == 22);
  CHECK(hours_of(zone("Antarctica/Troll", 2026), date(2026, 10, 25)) == 26);
  CHECK(hours_of(zone("Pacific/Chatham", 2026), date(2026, 4, 5)) == 25);
  CHECK(hours_of(zone("Asia/Kathmandu", 2026), date(2026, 7, 1)) == 24);
}

TEST_CASE("a day whose midnight does not exist begins an hour later") {
  const auto rules = zone("America/Santiago", 2026);
  CHECK(hours_of(rules, date(2026, 9, 6)) == 23);
  CHECK(hours_of(rules, date(2026, 4, 4)) == 25);
  const auto first = calendar::first_instant(rules, date(2026, 9, 6));
  CHECK(calendar::to_text(calendar::local_time(rules, first)) == "2026-09-06 01:00");
}

TEST_CASE("a date that the zone skipped has no hours, and the next day begins where it would") {
  const auto rules = zone("Pacific/Apia", 2011);
  CHECK(hours_of(rules, date(2011, 12, 30)) == 0);
  CHECK(hours_of(rules, date(2011, 12, 29)) == 24);
}

TEST_CASE("a year has the hours of its zone") {
  CHECK(hours_of_year(zone("Etc/UTC", 2027), 2027) == 8760);
  CHECK(hours_of_year(zone("Etc/UTC", 2028), 2028) == 8784);
  CHECK(hours_of_year(zone("Europe/Berlin", 2028), 2028) == 8784);
  CHECK(hours_of_year(zone("Pacific/Apia", 2011), 2011) == 8736);
  CHECK(hours_of_year(zone("Pacific/Kiritimati", 1994), 1994) == 8736);
  CHECK(hours_of_year(zone("America/Sao_Paulo", 2019), 2019) == 8761);
  CHECK(hours_of_year(zone("Pacific/Norfolk", 2015), 2015) == 8760.5);
}

TEST_CASE("a calendar month runs from its first instant to the next month's") {
  const auto months =
      calendar::calendar_months(zone("Europe/Berlin", 2026), 2026y / std::chrono::March, 2);
  REQUIRE(months.size() == 2);
  CHECK(months[0].hours() == 743);
  CHECK(months[0].days == 31);
  CHECK(months[1].hours() == 720);
}

TEST_CASE("days are calendar days, also one that the zone skipped") {
  const auto months =
      calendar::calendar_months(zone("Pacific/Apia", 2011), 2011y / std::chrono::December, 1);
  CHECK(months[0].days == 31);
  CHECK(months[0].hours() == 30 * 24);
}

TEST_CASE(
    "a clock that falls back over midnight shows a date twice, and its first pass begins it") {
  // An invented zone: at 00:01 of 2 January the clock goes back to 23:01 of 1 January.
  const calendar::Instant one_past_midnight{std::chrono::sys_days{2027y / 1 / 2} + 1min};
  const calendar::ZoneRules rules{0s, {{one_past_midnight, -1h}}};
  CHECK(hours_of(rules, date(2027, 1, 1)) == 24);
  CHECK(hours_of(rules, date(2027, 1, 2)) == 25);
}

TEST_CASE("times, dates and months are written as the ISO calendar writes them") {
  const model::CivilDay day = date(2027, 3, 7);
  CHECK(calendar::to_text(std::chrono::year{2027} / std::chrono::March) == "2027-03");
  CHECK(calendar::to_text(day) == "2027-03-07");
  CHECK(calendar::to_text(calendar::LocalTime{day} + 425min) == "2027-03-07 07:05");
  CHECK(calendar::to_text(calendar::LocalTime{day} + 9s) == "2027-03-07 00:00:09");
}
