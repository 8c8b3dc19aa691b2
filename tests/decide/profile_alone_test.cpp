#include "wattweek/decide/profile_alone.hpp"

#include <doctest/doctest.h>

#include "../support/about.hpp"
#include "../support/week_text.hpp"
#include "wattweek/read/read.hpp"

namespace wattweek::decide {
namespace {

using tests::exactly;

TEST_CASE("a watt around the clock is 8.76 kWh a year") {
  const YearOfWatts year = year_of(units::watts(1));
  CHECK(year.energy_kwh.low == exactly(8.76));
  CHECK(year.energy_kwh.high == exactly(8.76));
  REQUIRE(year.costs.size() == 4);
  CHECK(year.costs[0].price_per_kwh == 0.10);
  CHECK(year.costs[0].cost.low == exactly(0.876));
  CHECK(year.costs[2].price_per_kwh == 0.30);
  CHECK(year.costs[2].cost.high == exactly(2.628));
}

TEST_CASE("a range of watts is a range of energy and of cost") {
  const YearOfWatts year = year_of({units::watts(10), units::watts(20)});
  CHECK(year.energy_kwh.low == exactly(87.6));
  CHECK(year.energy_kwh.high == exactly(175.2));
  CHECK(year.costs[1].cost.low == exactly(17.52));
  CHECK(year.costs[1].cost.high == exactly(35.04));
}

TEST_CASE("a week has a mean, and the first of its lowest and highest hours") {
  const auto overview = [](const std::string& week) {
    const auto profile = read::profile({"p.toml", "p.toml", "[watts]\n" + week});
    REQUIRE(profile.value.has_value());
    return overview_of(*profile.value->week);
  };
  const WeekOverview rising = overview(tests::rising_week());
  CHECK(units::in_watts(rising.mean) == exactly(84.5));  // (1 + 168) / 2
  CHECK(rising.lowest_hour == 0);
  CHECK(rising.highest_hour == 167);
  const WeekOverview steady = overview(tests::steady_week(7));
  CHECK(units::in_watts(steady.mean) == exactly(7));
  CHECK(steady.highest_hour == 0);
}

std::vector<double> added(const std::string& text) {
  const auto profile = read::profile({"p.toml", "p.toml", text});
  REQUIRE(profile.value.has_value());
  std::vector<double> watts;
  for (const units::Power power : added_by_first_unit(*profile.value)) {
    watts.push_back(units::in_watts(power));
  }
  return watts;
}

TEST_CASE("the first unit adds its own watts, whatever the form of the increment") {
  const auto watts = added(
      "[watts]\nidle = 10\nbusy = 30\n[groups]\ndisks = 7\n[increments]\n"
      "a = [3, 4]\nb = { first = 5, each = 2 }\nc = { each = 2 }\nd = { table = [6, 9] }\n"
      "e = { load = 0.25 }\nf = { group = \"disks\" }\n");
  REQUIRE(watts.size() == 6);
  CHECK(watts[0] == exactly(3.5));
  CHECK(watts[1] == exactly(5));
  CHECK(watts[2] == exactly(2));
  CHECK(watts[3] == exactly(6));
  CHECK(watts[4] == exactly(5));  // A quarter of the way from 10 to 30 W.
  CHECK(watts[5] == exactly(0));
}

TEST_CASE("a load acts on the curve, and never beyond full load") {
  // f(u) = 2u - u^1.4 at u = 0.25: 0.5 - 0.143587 of 20 W.
  CHECK(added("[watts]\nidle = 10\nbusy = 30\ncurve = \"concave\"\n[increments]\n"
              "a = { load = 0.25 }\n")[0] == doctest::Approx(7.1283).epsilon(1e-4));
  CHECK(added("[watts]\nat_load = [10, 20, 24]\n[increments]\na = { load = 0.25 }\n")[0] ==
        exactly(5));
  CHECK(added("[watts]\nat_load = [10, 20, 24]\n[increments]\na = { load = 3 }\n")[0] ==
        exactly(14));
}

}  // namespace
}  // namespace wattweek::decide
