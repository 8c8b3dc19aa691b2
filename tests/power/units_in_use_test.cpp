#include "wattweek/power/units_in_use.hpp"

#include <doctest/doctest.h>

#include <numeric>

#include "../support/about.hpp"

using namespace wattweek::power;
using wattweek::model::Pattern;
using wattweek::tests::exactly;

namespace {

UnitsInUse of(std::vector<UseLaw> uses) {
  UnitsInUse sum;
  REQUIRE(units_in_use(uses, sum));
  return sum;
}

}  // namespace

TEST_CASE("five viewers, each there a fifth of the time, are a binomial number of viewers") {
  // Source: exact fractions of the binomial distribution with n = 5, p = 0.2.
  const UnitsInUse films = of({{5, 0.2, Pattern::independent}});
  const std::vector<double> expected{0.32768, 0.4096, 0.2048, 0.0512, 0.0064, 0.00032};
  REQUIRE(films.units.size() == 6);
  for (std::size_t k = 0; k < 6; ++k) CHECK(films.probability[k] == exactly(expected[k]));
  CHECK(films.mean == exactly(1.0));
  CHECK(films.any() == exactly(0.67232));
}

TEST_CASE("habits of different shares add up to a Poisson-binomial number") {
  // Source: exact fractions of the Poisson-binomial distribution with p = .1, .2, .3, .4.
  const UnitsInUse sum = of({{1, 0.1}, {1, 0.2}, {1, 0.3}, {1, 0.4}});
  const std::vector<double> expected{0.3024, 0.4404, 0.2144, 0.0404, 0.0024};
  REQUIRE(sum.units.size() == 5);
  for (std::size_t k = 0; k < 5; ++k) CHECK(sum.probability[k] == exactly(expected[k]));
  CHECK(sum.mean == exactly(1.0));

  // Same source, p = .1, .25, .5, .75, .9: symmetric.
  const UnitsInUse even = of({{1, 0.1}, {1, 0.25}, {1, 0.5}, {1, 0.75}, {1, 0.9}});
  const std::vector<double> half{27.0 / 3200, 363.0 / 3200, 121.0 / 320};
  for (std::size_t k = 0; k < 3; ++k) {
    CHECK(even.probability[k] == exactly(half[k]));
    CHECK(even.probability[5 - k] == exactly(half[k]));
  }
}

TEST_CASE("units that are used together come all at once or not at all") {
  const UnitsInUse pair = of({{2.5, 0.25}});
  CHECK(pair.units == std::vector<double>{0, 2.5});
  CHECK(pair.probability == std::vector<double>{0.75, 0.25});
  CHECK(pair.most == 2.5);
}

TEST_CASE("what is certain has one outcome, and what never happens none but zero") {
  CHECK(of({{3, 1.0}}).units == std::vector<double>{3});
  CHECK(of({{3, 0.0}}).units == std::vector<double>{0});
  CHECK(of({{0, 0.5, Pattern::independent}}).units == std::vector<double>{0});
  CHECK(of({{4, 1.0, Pattern::independent}}).units == std::vector<double>{4});
  CHECK(of({}).most == 0);
}

TEST_CASE("equal sums are merged however they come about") {
  const UnitsInUse sum = of({{0.1, 0.5}, {0.2, 0.5}, {0.3, 0.5}});
  CHECK(sum.units.size() == 7);  // 0.1 + 0.2 and 0.3 are the same number of units.
}

TEST_CASE("thousands of independent users lose no digits") {
  const UnitsInUse crowd = of({{100000, 0.3, Pattern::independent}});
  const double sum = std::accumulate(crowd.probability.begin(), crowd.probability.end(), 0.0);
  CHECK(sum == exactly(1.0));
  double mean = 0;
  for (std::size_t k = 0; k < crowd.units.size(); ++k)
    mean += crowd.units[k] * crowd.probability[k];
  CHECK(mean == doctest::Approx(30000).epsilon(1e-12));
  CHECK(crowd.most == 100000);  // Too rare for a double, but possible.
}

TEST_CASE("more than a million distinct sums are refused") {
  UnitsInUse sum;
  std::vector<UseLaw> uses;
  for (int i = 0; i < 21; ++i) uses.push_back({1.0 + 1e-5 * std::pow(2.0, i), 0.5});
  CHECK_FALSE(units_in_use(uses, sum));
  CHECK_FALSE(units_in_use({{2e6, 0.5, Pattern::independent}}, sum));
}
