// When a window holds, told as facts of the clock. Figures without another source are counts of
// days times hours.

#include <doctest/doctest.h>

#include "wattweek/calendar/fold.hpp"
#include "zones.hpp"

using namespace wattweek;
using namespace wattweek::tests;
using namespace std::chrono_literals;
using model::Window;

namespace {

Window at(model::HourSpan hours) {
  Window window;
  window.hours = {hours};
  return window;
}

model::WeekdaySet only(std::chrono::weekday day) {
  return model::WeekdaySet{1ULL << model::weekday_bit(day)};
}

const model::WeekdaySet kWorkdays{0x1F};
const model::WeekdaySet kWeekend{0x60};

}  // namespace

TEST_CASE("a window over midnight belongs to the evening it starts") {
  Window friday_night = at(clock(22, 0, 6, 0));
  friday_night.days = only(std::chrono::Friday);
  // 53 Fridays in 2027; the first of January is one, so all of its night lies in the year, and so
  // does that of 31 December but for the six hours of 2028.
  CHECK(window_hours(friday_night, zone("Etc/UTC", 2027), 2027) == 53 * 8 - 6);
}

TEST_CASE("an evening before the study reaches into its first morning") {
  Window thursday_night = at(clock(22, 0, 6, 0));
  thursday_night.days = only(std::chrono::Thursday);
  // 31 December 2026 is a Thursday.
  CHECK(window_hours(thursday_night, zone("Etc/UTC", 2027), 2027) == 52 * 8 + 6);
}

TEST_CASE("months and dates are judged by the evening a window starts on") {
  Window last_night = at(clock(22, 0, 6, 0));
  last_night.months = model::MonthSet{1};
  CHECK(window_hours(last_night, zone("Etc/UTC", 2027), 2027) == 31 * 8);
  Window one_night = at(clock(22, 0, 6, 0));
  one_night.dates = model::DateSpan{date(2027, 5, 31), date(2027, 5, 31)};
  CHECK(window_hours(one_night, zone("Etc/UTC", 2027), 2027) == 8);
}

TEST_CASE("spans that overlap count once") {
  Window window;
  window.hours = {clock(20, 0, 22, 0), clock(21, 0, 23, 0), clock(20, 30, 21, 30)};
  CHECK(window_hours(window, zone("Etc/UTC", 2027), 2027) == 365 * 3);
}

TEST_CASE("each span is judged by its own governing day") {
  Window window;
  window.days = only(std::chrono::Saturday);
  window.hours = {clock(22, 0, 2, 0), clock(0, 0, 1, 0)};
  // Saturday 00:00-01:00, 22:00-24:00 and Sunday 00:00-02:00: 5 hours on each of 52 Saturdays.
  CHECK(window_hours(window, zone("Etc/UTC", 2027), 2027) == 52 * 5);
}

TEST_CASE("an hour that the clocks skip does not hold, and one that they show twice counts twice") {
  // Sources: IANA time zone database; 365, 366 and 364 hours counted by 15-minute steps with an
  // independent reader.
  CHECK(window_hours(at(clock(2, 0, 3, 0)), zone("Europe/Berlin", 2026), 2026) == 365);
  CHECK(window_hours(at(clock(1, 0, 2, 0)), zone("America/New_York", 2026), 2026) == 366);
  CHECK(window_hours(at(clock(2, 0, 3, 0)), zone("America/New_York", 2026), 2026) == 364);
  CHECK(window_hours(at(clock(1, 0, 2, 0)), zone("Australia/Lord_Howe", 2026), 2026) == 365.5);
  CHECK(window_hours(at(clock(2, 0, 3, 0)), zone("Australia/Lord_Howe", 2026), 2026) == 364.5);
  CHECK(window_hours(at(clock(23, 0, 7, 0)), zone("Europe/Berlin", 2026), 2026) == 2920);
  CHECK(window_hours(at(clock(7, 0, 23, 0)), zone("Europe/Berlin", 2026), 2026) == 5840);
}

TEST_CASE("office hours of a year depend on how its weekdays fall") {
  // Source: day counts of the Gregorian calendar, taken with an independent reader.
  Window office = at(clock(8, 0, 20, 0));
  office.days = kWorkdays;
  Window weekend;
  weekend.days = kWeekend;
  Window early_sunday = at(clock(0, 0, 6, 0));
  early_sunday.days = only(std::chrono::Sunday);
  for (const char* name : {"Etc/UTC", "Europe/Berlin"}) {
    CAPTURE(name);
    CHECK(window_hours(office, zone(name, 2024), 2024) == 3144);
    CHECK(window_hours(office, zone(name, 2026), 2026) == 3132);
    CHECK(window_hours(office, zone(name, 2028), 2028) == 3120);
  }
  CHECK(window_hours(weekend, zone("Etc/UTC", 2024), 2024) == 2496);
  CHECK(window_hours(weekend, zone("Etc/UTC", 2028), 2028) == 2544);
  CHECK(window_hours(early_sunday, zone("Etc/UTC", 2026), 2026) == 312);
  CHECK(window_hours(early_sunday, zone("Etc/UTC", 2028), 2028) == 318);
}

TEST_CASE("a holiday counts as the weekday that is named, also where its night ends") {
  model::Holidays holidays{{date(2027, 1, 6)}, {}, std::chrono::Sunday};  // A Wednesday.
  Window sunday = at(clock(20, 0, 2, 0));
  sunday.days = only(std::chrono::Sunday);
  Window wednesday = sunday;
  wednesday.days = only(std::chrono::Wednesday);
  const auto rules = zone("Etc/UTC", 2027);
  CHECK(window_hours(sunday, rules, 2027, &holidays) == 53 * 6);
  CHECK(window_hours(wednesday, rules, 2027, &holidays) == 51 * 6);
}

TEST_CASE("without holidays_as a holiday is an ordinary day") {
  model::Holidays holidays{{date(2027, 1, 6)}, {}, {}};
  Window wednesday;
  wednesday.days = only(std::chrono::Wednesday);
  CHECK(window_hours(wednesday, zone("Etc/UTC", 2027), 2027, &holidays) == 52 * 24);
}

TEST_CASE("who is away in the evening does not use the night that follows") {
  Window night = at(clock(22, 0, 6, 0));
  const model::DateSpan away{date(2027, 7, 5), date(2027, 7, 18)};
  // The nights that start on the 14 dates away are left out, the one that ends on the first is not.
  CHECK(window_hours(night, zone("Etc/UTC", 2027), 2027, nullptr, {away}) == 365 * 8 - 14 * 8);
}

TEST_CASE("the day before is the calendar's, also where the zone skipped it") {
  // Apia had no 30 December 2011: the night of the 30th has only its part on the 31st.
  Window night = at(clock(22, 0, 6, 0));
  night.dates = model::DateSpan{date(2011, 12, 30), date(2011, 12, 30)};
  CHECK(window_hours(night, zone("Pacific/Apia", 2011), 2011) == 6);
  night.dates = model::DateSpan{date(2011, 12, 29), date(2011, 12, 29)};
  CHECK(window_hours(night, zone("Pacific/Apia", 2011), 2011) == 2);
}
