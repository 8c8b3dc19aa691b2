#include "wattweek/decide/quick.hpp"

#include <doctest/doctest.h>

#include "../support/about.hpp"

using wattweek::decide::quick;
using wattweek::tests::exactly;

TEST_CASE("two readings and a price answer for a year of 365 days") {
  // Common practice, no source: 13.5 W idle, 29 W with five streams, four hours every evening.
  const auto year = quick({13.5, 29, 4, 0.30});
  CHECK(year.energy_kwh == exactly(140.89));
  CHECK(year.mean_w == exactly(140890.0 / 8760));
  CHECK(year.cost == exactly(42.267));
}

TEST_CASE("without busy hours the machine idles all year") {
  CHECK(quick({13.5, 0, 0, 0.30}).energy_kwh == exactly(118.26));
}
