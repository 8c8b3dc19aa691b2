// Watts by bins: each of them narrow, one next to the other.

#include <doctest/doctest.h>

#include <cmath>
#include <random>

#include "wattweek/metering/measuring.hpp"

namespace wattweek {
namespace {

using metering::bin_of;
using metering::lower_w;

TEST_CASE("bins follow one another up to the highest reading and begin at 0 W") {
  CHECK(lower_w(0) == 0);
  CHECK(lower_w(1) == metering::kLeastBinned_w);
  const std::size_t last = bin_of(metering::kHighestReading_w);
  for (std::size_t bin = 0; bin <= last; ++bin) {
    CAPTURE(bin);
    REQUIRE(bin_of(lower_w(bin)) == bin);
    REQUIRE(bin_of(std::nextafter(lower_w(bin + 1), 0.0)) == bin);
    REQUIRE(lower_w(bin) < lower_w(bin + 1));
  }
}

TEST_CASE("a bin is no wider than a 128th of its lower end") {
  for (std::size_t bin = 1; bin <= bin_of(metering::kHighestReading_w); ++bin) {
    CAPTURE(bin);
    REQUIRE(lower_w(bin + 1) - lower_w(bin) <= lower_w(bin) / 128);
  }
}

TEST_CASE("watts lie in their bin and more watts in no lower one") {
  std::mt19937_64 chance(1);
  std::uniform_real_distribution<double> exponent(-8, 6);
  for (int i = 0; i < 20'000; ++i) {
    const double watts = std::pow(10.0, exponent(chance));
    CAPTURE(watts);
    REQUIRE(lower_w(bin_of(watts)) <= watts);
    REQUIRE(watts < lower_w(bin_of(watts) + 1));
    REQUIRE(bin_of(watts) <= bin_of(watts * (1 + 1e-9)));
  }
}

}  // namespace
}  // namespace wattweek
