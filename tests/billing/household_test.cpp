#include "wattweek/billing/household.hpp"

#include <doctest/doctest.h>

#include "../calendar/zones.hpp"
#include "../support/about.hpp"

using namespace wattweek;
using namespace wattweek::billing;
using namespace wattweek::units;
using namespace std::chrono_literals;
using tests::exactly;

TEST_CASE("a year's kWh are spread over the days of its calendar year") {
  const auto months =
      calendar::calendar_months(tests::zone("Etc/UTC", 2027, 2), 2027y / std::chrono::December, 3);
  const model::Household household{Range<Energy>(kilowatt_hours(3650)), {}, {}};
  const auto kwh = metered_household(household, months);
  CHECK(in_kilowatt_hours(kwh[0]) == exactly(310));
  CHECK(in_kilowatt_hours(kwh[1]) == exactly(3650.0 * 31 / 366));  // 2028 is a leap year.
  CHECK(in_kilowatt_hours(kwh[2]) == exactly(3650.0 * 29 / 366));
}

TEST_CASE("a month that the metered machine leaves below zero is found") {
  const auto left = without_candidate({kilowatt_hours(30), kilowatt_hours(10)},
                                      {kilowatt_hours(12), kilowatt_hours(11)});
  REQUIRE(std::holds_alternative<HouseholdBelowZero>(left));
  CHECK(std::get<HouseholdBelowZero>(left).month == 1);
}

TEST_CASE("what rounding leaves below zero is zero") {
  const auto left = without_candidate({kilowatt_hours(12 - 5e-10)}, {kilowatt_hours(12)});
  REQUIRE(std::holds_alternative<std::vector<Energy>>(left));
  CHECK(in_kilowatt_hours(std::get<std::vector<Energy>>(left)[0]) == 0);
}
