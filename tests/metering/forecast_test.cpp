#include "wattweek/metering/forecast.hpp"

#include <doctest/doctest.h>

#include <cmath>

#include "made_measured.hpp"

namespace wattweek::metering {
namespace {

constexpr double kHour_s = 3600;
constexpr double kWeek_s = 168 * kHour_s;

YearForecast year_of(const MadeMeasured& made, const MeterError& meter = {}) {
  return forecast(made.measured(), week_of(made.measured()), meter);
}

TEST_CASE("week: Monday's first hour comes first") {
  MadeMeasured made(60, kMondayHour + 25);  // Tuesday 01:00
  made.add(kHour_s, 10).add(0.5 * kHour_s, 20).skip(0.5 * kHour_s).add(kHour_s, 30);
  const Week week = week_of(made.measured());
  CHECK(week[25] == 10);
  CHECK(week[26] == 20);
  CHECK(week[27] == 30);
  CHECK_FALSE(week[24]);
  CHECK_FALSE(week[28]);
  MadeMeasured epoch(60, 0);  // Thursday, 1 January 1970
  epoch.add(kHour_s, 10);
  CHECK(week_of(epoch.measured())[72] == 10);
  MadeMeasured before(60, -1);
  before.add(kHour_s, 10);
  CHECK(week_of(before.measured())[71] == 10);
}

TEST_CASE("week: an hour is weighted by its time in each week") {
  MadeMeasured made;
  made.add(kHour_s, 10).skip(kWeek_s - kHour_s).add(0.25 * kHour_s, 20);
  CHECK(week_of(made.measured())[0] == doctest::Approx(12));  // (10 + 20 / 4) / 1.25
}

TEST_CASE("year: 8760 hours of the mean week") {
  MadeMeasured made;
  for (int week = 0; week < 2; ++week) made.add(100 * kHour_s, 10).add(68 * kHour_s, 20);
  const YearForecast year = year_of(made);
  REQUIRE(year.energy_kwh);
  CHECK(*year.energy_kwh == doctest::Approx(2360.0 / 168 * 8.76));
  // Two equal weeks.
  CHECK(*year.low == doctest::Approx(*year.energy_kwh));
  CHECK(*year.high == doctest::Approx(*year.energy_kwh));
  CHECK(year.weeks == 2);
}

// Student's t, 97.5 %: GUM (JCGM 100:2008), table G.2: 12.71 for 1 degree of freedom, 4.30 for 2,
// 3.18 for 3.
TEST_CASE("year: the interval is Student's of the weekly means") {
  struct Case {
    std::vector<double> weeks_w;
    double t;
  };
  for (const Case& one :
       {Case{{10, 12}, 12.71}, Case{{10, 12, 11}, 4.30}, Case{{10, 14, 11, 15}, 3.18}}) {
    MadeMeasured made;
    double mean_w = 0;
    for (const double watts : one.weeks_w) made.add(kWeek_s, watts);
    const auto n = static_cast<double>(one.weeks_w.size());
    for (const double watts : one.weeks_w) mean_w += watts / n;
    double squares = 0;
    for (const double watts : one.weeks_w) squares += (watts - mean_w) * (watts - mean_w);
    const double standard_error = std::sqrt(squares / (n - 1) / n);
    const YearForecast year = year_of(made);
    CHECK(*year.energy_kwh == doctest::Approx(mean_w * 8.76));
    CHECK(*year.high - *year.energy_kwh ==
          doctest::Approx(one.t * standard_error * 8.76).epsilon(0.002));
    CHECK(*year.low == doctest::Approx(std::max(0.0, 2 * *year.energy_kwh - *year.high)));
    CHECK(year.weeks == one.weeks_w.size());
  }
}

TEST_CASE("year: the low end is not below 0") {
  MadeMeasured made;
  made.add(kWeek_s, 1).add(kWeek_s, 9);
  CHECK(year_of(made).low == 0);
}

// JCGM 100:2008, G.4.1 and table G.2, by hand.
TEST_CASE("year: the meter's error joins by Welch and Satterthwaite") {
  MadeMeasured made;
  made.add(kWeek_s, 9).add(kWeek_s, 11).add(kWeek_s, 10);
  // Weeks: 1 / sqrt(3) W. Meter: 2 % of 10 W and 0.8 W are 1 W at most: 1 / sqrt(3) W. Both:
  // sqrt(2/3) W with 2 x 2^2 = 8 degrees of freedom, t 2.31.
  const YearForecast year = year_of(made, {2, 0.8});
  CHECK(*year.energy_kwh == doctest::Approx(87.6));
  CHECK(*year.high == doctest::Approx(87.6 + 2.31 * std::sqrt(2.0 / 3) * 8.76).epsilon(1e-3));
  // Equal weeks: the meter alone, normal: 1.96.
  MadeMeasured equal;
  equal.add(2 * kWeek_s, 10);
  const YearForecast sure = year_of(equal, {2, 0.8});
  CHECK(*sure.high == doctest::Approx(87.6 + 1.959963985 / std::sqrt(3.0) * 8.76));
}

TEST_CASE("year: an hour of the week that was never seen leaves nothing") {
  MadeMeasured made;
  for (int week = 0; week < 4; ++week) made.add(167 * kHour_s, 10).skip(kHour_s);
  const YearForecast year = year_of(made);
  CHECK_FALSE(year.energy_kwh);
  CHECK_FALSE(year.low);
  CHECK_FALSE(year.high);
  CHECK(year.weeks == 0);
}

TEST_CASE("year: no interval below two weeks") {
  MadeMeasured made;
  made.add(335.9 * kHour_s, 10);
  YearForecast year = year_of(made);
  CHECK(year.energy_kwh);
  CHECK_FALSE(year.low);
  CHECK_FALSE(year.high);
  made.add(0.1 * kHour_s, 10);
  year = year_of(made);
  CHECK(year.low);
  CHECK(year.weeks == 2);
}

TEST_CASE("year: two weeks over a clock change are two weeks") {
  // The clocks show an hour twice: 336 hours are 335 of the local clock.
  MadeMeasured made;
  made.add(335 * kHour_s, 10);
  Measured measured = made.measured();
  measured.hours[200].seconds *= 2;
  measured.hours[200].joules *= 2;
  const YearForecast year = forecast(measured, week_of(measured), {});
  CHECK(year.low);
  CHECK(year.weeks == 2);
}

TEST_CASE("year: days left over count in the mean, and not as a week") {
  MadeMeasured made;
  made.add(kWeek_s, 10).add(kWeek_s, 12).add(0.5 * kWeek_s, 11);
  const YearForecast year = year_of(made);
  CHECK(*year.energy_kwh == doctest::Approx(11 * 8.76));
  CHECK(year.weeks == 2);
  // Each week is off by 1 W in half of the hours, which were seen three times, and in the other
  // half, seen twice: (1/3 + 1/2) / 2 of a watt. 2.5 weeks' worth: 2.5^2 / (2 x 1.5) x 2 squares.
  const double off_w = (1.0 / 3 + 1.0 / 2) / 2;
  const double standard_error = std::sqrt(2.5 * 2.5 / 3 * 2 * off_w * off_w);
  CHECK(*year.high - *year.energy_kwh ==
        doctest::Approx(12.7062 * standard_error * 8.76).epsilon(1e-5));
}

TEST_CASE("year: a week without any time does not count") {
  MadeMeasured made;
  made.add(kWeek_s, 10).skip(kWeek_s).add(kWeek_s, 12);
  CHECK(year_of(made).weeks == 2);
}

}  // namespace
}  // namespace wattweek::metering
