#include "wattweek/decide/break_even.hpp"

#include <doctest/doctest.h>

#include "../support/about.hpp"

using namespace wattweek::decide;
using wattweek::tests::exactly;

namespace {

BreakEvenInput yearly(double fixed_candidate, double candidate, double fixed_baseline,
                      double baseline) {
  BreakEvenInput input;
  input.months = {{0, {}, candidate, baseline}};
  input.fixed_candidate = fixed_candidate;
  input.fixed_baseline = fixed_baseline;
  return input;
}

void check_factor(const BreakEvenInput& input, double expected) {
  const auto got = break_even_price_factor(input);
  REQUIRE(got.has_value());
  CHECK(*got == exactly(expected));
}

}  // namespace

TEST_CASE("a dear frugal box and a cheap hungry one cost the same at one price level") {
  check_factor(yearly(200, 21.9, 0, 87.6), 200 / 65.7);
}

TEST_CASE("there is none where the cheaper box is also the more frugal one") {
  CHECK_FALSE(break_even_price_factor(yearly(0, 10, 100, 20)).has_value());
}

TEST_CASE("two that cost the same at every price are equal at today's") {
  check_factor(yearly(100, 20, 100, 20), 1);
}

TEST_CASE("beyond a million times today's price there is none") {
  CHECK_FALSE(break_even_price_factor(yearly(1e6, 0.1, 0, 0.6)).has_value());
}

TEST_CASE("under a minimum bill both cost the same up to where the first leaves it") {
  // Bills of max(40, 60 x) and max(40, 80 x), no purchases: equal up to 0.5, apart above.
  BreakEvenInput input;
  input.months = {{0, 40.0, 60, 80}};
  check_factor(input, 0.5);
}

TEST_CASE("of several price levels the one nearest to today's counts") {
  // Bills max(100, 150 x) and max(100, 50 x), and 30 more to pay for the second: equal at
  // 150 x = 130. Bills max(500, 50 x) and max(500, 400 x) of a second month make them equal again
  // at 150 x + 500 = 130 + 400 x, x = 1.48.
  BreakEvenInput input;
  input.months = {{0, 100.0, 150, 50}, {0, 500.0, 50, 400}};
  input.fixed_baseline = 30;
  check_factor(input, 130.0 / 150);
}

TEST_CASE("of two levels equally near to today's price the lower one counts") {
  // The difference is 20 - 40 x + max(80, 80 x) - 80: zero at 0.5 and at 1.5, below between.
  BreakEvenInput input;
  input.months = {{0, {}, -40, 0}, {0, 80.0, 80, 0}};
  input.fixed_candidate = 20;
  check_factor(input, 0.5);
}

TEST_CASE("of an interval of equality its point nearest to today's price counts") {
  // Bills max(20, 40 x) and 20: equal from 0 to 0.5.
  BreakEvenInput input;
  input.months = {{0, 20.0, 40, 0}};
  check_factor(input, 0.5);
}
