#include "wattweek/units/quantity.hpp"

#include <doctest/doctest.h>

#include <concepts>
#include <functional>

#include "wattweek/units/range.hpp"

using namespace wattweek::units;

static_assert(watts(1000) * hours(0.5) == kilowatt_hours(0.5));
static_assert(kilowatt_hours(2) * per_kilowatt_hour(0.25) == money(0.5));
static_assert(kilowatt_hours(8.76) / hours(8760) == watts(1));
static_assert(!std::invocable<std::plus<>, Power, Energy>, "watts never add to kWh");
static_assert(!std::invocable<std::multiplies<>, Power, UnitPrice>, "watts have no price");
static_assert(!std::invocable<std::multiplies<>, Power, Power>);
static_assert(!std::invocable<std::plus<>, Money, UnitPrice>);
static_assert(!std::constructible_from<Power, double>, "a bare number has no unit");
static_assert(!std::convertible_to<Power, double>, "a number leaves by naming its unit");

TEST_CASE("50 W held for a week of 168 hours is 8.4 kWh") {
  // Source: ENERGY STAR imaging equipment specification in Council document 10193/12, page
  // C-136, which prints 8.4 kWh a week and the difference 24.5 - 8.4 = 16.1.
  CHECK(in_kilowatt_hours(watts(50) * hours(168)) == 8.4);
  CHECK(in_kilowatt_hours(kilowatt_hours(24.5) - watts(50) * hours(168)) ==
        doctest::Approx(16.1).epsilon(1e-12));
}

TEST_CASE("the midpoint of a range stands for it, and a plain number is its own midpoint") {
  CHECK(Range<Power>(watts(13), watts(14)).central() == watts(13.5));
  CHECK(Range<double>(0.1).central() == 0.1);
  CHECK(Range<double>(0.1).is_exact());
  CHECK_FALSE(Range<double>(0.1, 0.2).is_exact());
}
