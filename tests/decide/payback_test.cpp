#include <doctest/doctest.h>

#include "../support/about.hpp"
#include "wattweek/decide/lifetime.hpp"

using namespace wattweek::decide;
using wattweek::tests::about;
using wattweek::tests::exactly;

TEST_CASE("a purchase pays back when it costs more and saves") {
  CHECK(payback_years({120, 78.84}) == doctest::Approx(1.52207001522).epsilon(1e-11));
  CHECK(payback_years({0, 10}) == 0.0);
  CHECK(payback_years({-50, 0}) == 0.0);
  CHECK_FALSE(payback_years({100, 0}).has_value());
  CHECK_FALSE(payback_years({100, -5}).has_value());
  CHECK_FALSE(payback_years({-100, -5}).has_value());
}

TEST_CASE("a box that is cheaper to buy and dearer to run is overtaken") {
  CHECK(overtaken_years({-200, -50}) == 4.0);
  CHECK_FALSE(overtaken_years({200, 50}).has_value());
  CHECK_FALSE(overtaken_years({-200, 50}).has_value());
  CHECK_FALSE(overtaken_years({-200, 0}).has_value());
}

TEST_CASE("discounted savings take longer to pay a purchase back") {
  // Derived: 120 EUR dearer, 78.84 EUR saved a year at 3 %: discounted savings add up to
  // 76.5436893204 after one year and 150.857950796 after two, and grow evenly within a year. (The
  // closed form that discounts within the year too, -ln(1 - d x) / ln(1 + d), gives 1.5812.)
  const auto years = discounted_payback_years({5, 0.03, 0}, {120, 78.84}, {}, {});
  REQUIRE(years.has_value());
  CHECK(*years == about(1 + (120 - 76.5436893204) / (150.857950796 - 76.5436893204)));
}

TEST_CASE("what is never reached within the horizon is never paid back") {
  CHECK_FALSE(discounted_payback_years({3, 0, 0}, {200, 60}, {}, {}).has_value());
  CHECK(discounted_payback_years({4, 0, 0}, {240, 60}, {}, {}) == exactly(4.0).expected);
}

TEST_CASE("a repair that eats the savings again undoes a payback") {
  // By hand: 60 a year, 150 due in year 4: 60, 120, 180, 240 - 150 = 90, 150.
  CHECK_FALSE(discounted_payback_years({5, 0, 0}, {200, 60}, {{4, 150}}, {}).has_value());
  // With eight years it goes on 150, 210, 270: reached for good in year 6, at 200.
  const auto years = discounted_payback_years({8, 0, 0}, {200, 60}, {{4, 150}}, {});
  REQUIRE(years.has_value());
  CHECK(*years == exactly(5 + (200.0 - 150) / 60));
}

TEST_CASE("a repair of the old machine can pay the new one back at a stroke") {
  const auto years = discounted_payback_years({5, 0, 0}, {200, 30}, {}, {{3, 150}});
  REQUIRE(years.has_value());
  CHECK(*years == 3);
}

TEST_CASE("a purchase that costs nothing extra is paid back from the start, if it does not lose") {
  CHECK(discounted_payback_years({5, 0.03, 0}, {0, 10}, {}, {}) == 0.0);
  CHECK(discounted_payback_years({5, 0.03, 0}, {-100, -10}, {}, {}) == 0.0);
  CHECK_FALSE(discounted_payback_years({5, 0, 0}, {-100, -30}, {}, {}).has_value());
}

TEST_CASE("later costs beyond the horizon do not count against a payback") {
  CHECK(discounted_payback_years({2, 0, 0}, {60, 60}, {{3, 1000}}, {}) == 1.0);
}
