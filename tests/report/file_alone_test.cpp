#include "wattweek/report/file_alone.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <sstream>

#include "../support/week_text.hpp"
#include "wattweek/diag/printable.hpp"
#include "wattweek/read/read.hpp"
#include "wattweek/report/cautions.hpp"

namespace wattweek::report {
namespace {

std::string tariff(const std::string& text, const Style& style = {}) {
  const auto got = read::tariff({"t.toml", "t.toml", text});
  for (const auto& problem : got.problems) FAIL_CHECK(diag::to_text(problem));
  REQUIRE(got.value.has_value());
  return tariff_text(*got.value, calendar::walk(*got.value), style);
}

model::Profile profile(const std::string& text) {
  const auto got = read::profile({"p.toml", "p.toml", text});
  for (const auto& problem : got.problems) FAIL_CHECK(diag::to_text(problem));
  REQUIRE(got.value.has_value());
  return *got.value;
}

void check_width(const std::string& text, std::size_t columns) {
  std::istringstream lines(text);
  for (std::string line; std::getline(lines, line);) {
    CAPTURE(line);
    CHECK(diag::column_count(line) <= columns);
  }
}

const std::string kSeasons = R"(currency = "EUR"
tax = 0.09
standing_per_day = 0.58
standing_per_month = [1.5, 2]
minimum_per_month = 12
holidays = [2027-01-06, 2027-12-25]
holidays_as = "sun"
[[band]]
name = "night"
price = 0.175
months = "nov-feb"
hours = "22:00-06:00"
[[band]]
name = "weekend"
price = [0.20, 0.22]
days = "sat,sun"
[[band]]
name = "day"
price = 0.3
)";

TEST_CASE("tariff: kinds of day, bands with both prices, and each term in a line") {
  CHECK(tariff(kSeasons) == R"(What the next kWh costs, in EUR

days                      hours        band         before tax          with tax
mon to fri, nov to feb    00:00-06:00  night             0.175            0.1908
                          22:00-24:00
                          06:00-22:00  day               0.300            0.3270
mon to fri, mar to oct    00:00-24:00  day               0.300            0.3270
sat, sun and holidays,
nov to feb                00:00-06:00  night             0.175            0.1908
                          22:00-24:00
                          06:00-22:00  weekend  0.200 to 0.220  0.2180 to 0.2398
sat and sun, mar to oct   00:00-24:00  weekend  0.200 to 0.220  0.2180 to 0.2398

- Hours over midnight belong to the day on which they start. So until 06:00
  these begin as the day before goes on: 1 mar and 1 nov.
- Standing charge: 0.58 (0.6322 with tax) a day and 1.50 to 2.00 (1.635 to 2.180
  with tax) a month.
- Minimum: 12.00 (13.08 with tax) a month.
- Tax: 9 % on everything.
- Holidays: 2 dates in 2027, counted as sun.
)");
}

TEST_CASE("tariff: blocks stand by season, in yen without decimals, and no tax is said") {
  CHECK(tariff(R"(currency = "JPY"
blocks_per = "day"
holidays_as = "sun"
block = [
  { up_to = 12, price = 14, months = "may-oct" }, { price = [19, 21], months = "may-oct" },
  { price = 13.5, months = "nov-mar" } ]
)") == R"(What the bands add to the price of the next kWh, in JPY

days       hours        band  price
every day  00:00-24:00  all       0

- Blocks, nov to mar, on top of the bands: 13.5.
- Blocks, apr: none.
- Blocks, may to oct, on top of the bands: 14 up to 12 kWh a day, then 19 to 21.
- Standing charge: none.
- Minimum: none.
- Tax: none is added.
- Holidays: the study's count as sun.
)");
}

TEST_CASE("tariff: a holiday that no band covers is shown where the study names the holidays") {
  CHECK(tariff(R"(currency = "EUR"
holidays_as = "sun"
[[band]]
name = "early"
price = 0.1
days = "sat"
hours = "22:00-07:00"
[[band]]
name = "working days"
price = 0.3
days = "mon-sat"
[[band]]
name = "late"
price = 0.2
days = "sun"
hours = "07:00-24:00"
)") == R"(What the next kWh costs, in EUR

days        hours        band          price
mon to fri  00:00-24:00  working days   0.30
sat         00:00-22:00  working days   0.30
            22:00-24:00  early          0.10
sun         00:00-07:00  early          0.10
            07:00-24:00  late           0.20
holidays    00:00-07:00  no band
            07:00-24:00  late           0.20

- Hours over midnight belong to the day on which they start. So until 07:00
  these begin as the day before goes on: the day after a holiday.
- Where it says no band, none holds: a study in which such a day occurs is
  refused.
- Standing charge: none.
- Minimum: none.
- Tax: none is added.
- Holidays: the study's count as sun.
)");
}

TEST_CASE("tariff: dates stand in the row that they are about") {
  CHECK(tariff(R"(currency = "EUR"
tax = [0.1, 0.2]
holidays = [2027-05-01]
band = [
  { name = "offer", price = -0.05, dates = "2027-06-01..2027-06-14", hours = "22:00-02:00" },
  { name = "day", price = 0.3 } ]
)") == R"(What the next kWh costs, in EUR

                                                        before
days                   hours                     band      tax          with tax
other dates            00:00-24:00               day      0.30    0.330 to 0.360
2027-06-01 to
2027-06-14             00:00-02:00, 22:00-24:00  offer   -0.05  -0.060 to -0.055
                       02:00-22:00               day      0.30    0.330 to 0.360

- Hours over midnight belong to the day on which they start. So until 02:00
  these begin as the day before goes on: 2027-06-01 and 2027-06-15.
- Standing charge: none.
- Minimum: none.
- Tax: 10 to 20 % on everything.
- Holidays: 1 date in 2027, but without holidays_as ordinary days.
)");
}

TEST_CASE("tariff: ten seasons on two kinds of day stay within 80 columns and 60 lines") {
  std::string text = "currency = \"EUR\"\ntax = 0.2\n";
  for (const char* month : {"jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct"}) {
    text += std::string("[[band]]\nname = \"peak ") + month + "\"\nprice = 0.3\nmonths = \"" +
            month + "\"\ndays = \"mon-fri\"\nhours = \"07:00-09:00,17:00-20:00\"\n";
  }
  text += "[[band]]\nname = \"night\"\nprice = 0.1\nhours = \"23:00-06:00\"\n";
  text += "[[band]]\nname = \"day\"\nprice = 0.2\n";
  const std::string said = tariff(text);
  check_width(said, 80);
  CHECK(std::count(said.begin(), said.end(), '\n') <= 60);
  CHECK(said.find("mon to fri, nov and dec; sat") != std::string::npos);
  check_width(tariff(text, {40, false}), 40);
}

TEST_CASE("tariff: a table of very many kinds of day is cut, and says by how many") {
  std::string text = "currency = \"EUR\"\n";
  for (int year = 2027; year < 2227; ++year) {
    const std::string y = std::to_string(year);
    text += "[[band]]\nname = \"" + y + "\"\nprice = 0.3\ndates = \"" + y + "-01-01.." + y +
            "-06-30\"\n";
  }
  const std::string said = tariff(text + "[[band]]\nname = \"day\"\nprice = 0.2\n");
  CHECK(said.find("\n2146-01-01 to 2146-06-30  ") == std::string::npos);
  CHECK(said.find("\n2145-01-01 to 2145-06-30  ") != std::string::npos);
  CHECK(said.find("\n- 81 more kinds of day.\n") != std::string::npos);
}

const std::string kTower = R"(name = "old tower"
meter = "hall"
[watts]
off = 1
sleep = [2, 2.5]
idle = [38, 42]
busy = 95
max = 110
[groups]
disks = 7.5
[increments]
films = [3.0, 3.2]
games = { table = [6.0, 9.5, 11.0] }
mail = { table = [2] }
photos = { first = 4.0, each = 2.0, group = "disks" }
radio = 1.2
scrub = { group = "disks" }
search = { load = [0.05, 0.07] }
)";

TEST_CASE("profile: watts by state, an idle year at plain prices, and what uses add") {
  CHECK(profile_text(profile(kTower), {}) ==
        R"(At the wall socket: 1 W off, 2 to 2.5 W asleep, 38 to 42 W idle, 95 W at full
load and 110 W at most.
Read on the meter hall; what that meter is off by is said in a study.
Idle all year, 8760 h, is 332.9 to 367.9 kWh. No contract is known here. At a
plain price that costs 33.29 to 36.79 at 0.10 a kWh, 66.58 to 73.58 at 0.20,
99.86 to 110.38 at 0.30 and 133.15 to 147.17 at 0.40.
1 W all year is 8.76 kWh: 0.88 at 0.10 a kWh, 2.63 at 0.30.

What is added in use
- films: 3 to 3.2 W for each unit.
- games: 6 W for the first unit, 11 W for 3 or more.
- mail: 2 W for one unit or more.
- photos: 4 W for the first unit, 2 W for each further one, and 7.5 W while
  anything of the group disks is in use.
- radio: 1.2 W for each unit.
- scrub: 7.5 W while anything of the group disks is in use.
- search: 5 to 7 % of full load for each unit, 3.3 W for the first.
)");
}

TEST_CASE("profile: without increments it says that they are missing") {
  CHECK(profile_text(profile("[watts]\nidle = 8\n"), {}) ==
        R"(At the wall socket: 0 W off and 8 W idle.
Idle all year, 8760 h, is 70.1 kWh. No contract is known here. At a plain price
that costs 7.01 at 0.10 a kWh, 14.02 at 0.20, 21.02 at 0.30 and 28.03 at 0.40.
1 W all year is 8.76 kWh: 0.88 at 0.10 a kWh, 2.63 at 0.30.
What uses add is not given: no increments.
)");
}

TEST_CASE("profile: of a week its mean, its lowest and highest hour, and a year of such weeks") {
  // 165 hours of 10 W, two of 9.5 W and one of 31 W: 1700 Wh a week, 10.119 W, and 88.64 kWh in
  // 8760 h.
  const std::string week = tests::week_text([](int hour) {
    return hour == 26 || hour == 50 ? 9.5 : hour == 140 ? 31.0 : 10.0;
  });
  CHECK(profile_text(profile("meter = \"hall\"\n[watts]\noff = 0.5\nsleep = 2\n" + week), {}) ==
        R"(At the wall socket: 0.5 W off, 2 W asleep, and 10.12 W as the mean of the week,
from 9.5 W (first on tue at 02:00) to 31 W (first on sat at 20:00).
Read on the meter hall; what that meter is off by is said in a study.
A year of such weeks, 8760 h, is 88.6 kWh. No contract is known here. At a plain
price that costs 8.86 at 0.10 a kWh, 17.73 at 0.20, 26.59 at 0.30 and 35.46 at
0.40.
1 W all year is 8.76 kWh: 0.88 at 0.10 a kWh, 2.63 at 0.30.
What uses add is in these watts: a device with a week runs no workloads.
)");
}

TEST_CASE("profile: measured watts are shown to a hundredth") {
  const std::string week = tests::week_text([](int hour) {
    return hour == 0 ? 9.123456 : hour == 5 ? 29.970929 : 10.0;
  });
  std::string said = profile_text(profile("[watts]\n" + week), {});
  std::replace(said.begin(), said.end(), '\n', ' ');
  CHECK(said.find("from 9.12 W (first on mon at 00:00)") != std::string::npos);
  CHECK(said.find("to 29.97 W (first on mon at 05:00)") != std::string::npos);
}

TEST_CASE("profile: a week without highs and lows") {
  const std::string said = profile_text(profile("[watts]\n" + tests::steady_week(10)), {});
  CHECK(said.find("At the wall socket: 0 W off, and 10 W in every hour of the week.\n"
                  "A year of such weeks, 8760 h, is 87.6 kWh.") == 0);
}

TEST_CASE("profile: the highest watts are spoken of where busy, max or at_load is given") {
  CHECK_FALSE(speaks_of_highest_watts(profile("[watts]\nidle = 8\n")));
  CHECK(speaks_of_highest_watts(profile("[watts]\nidle = 8\nbusy = 20\n")));
  CHECK(speaks_of_highest_watts(profile("[watts]\nidle = 8\nmax = 20\n")));
  CHECK(speaks_of_highest_watts(profile("[watts]\n" + tests::rising_week())));
  const model::Profile measured = profile("[watts]\nat_load = [8, 20]\n");
  CHECK(speaks_of_highest_watts(measured));
  CHECK(profile_text(measured, {}).find("0 W off, 8 W idle and 20 W at full load.\n") !=
        std::string::npos);
}

TEST_CASE("cautions: several follow each other, each whole") {
  CHECK(cautions_text({highest_watts_caution(), measuring_caution()}, {}) ==
        R"(The highest watts are a modelled mean, not a figure for sizing a fuse, cable,
timer plug or UPS: peaks lie above it. Local rules and licensed people decide
there (docs/safety.md).
Before a meter goes between plug and socket: shut down, mind its rated current,
chain no power strips, open nothing (docs/safety.md).
)");
}

}  // namespace
}  // namespace wattweek::report
