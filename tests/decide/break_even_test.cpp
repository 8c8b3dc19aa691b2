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
  // Bills max(100, 150 x) and max(100, 50 x), and a purchase that is 30 dearer for the first: they
  // cross where 150 x - 100 = -30 never, so the baseline pays 30 more: 150 x + 0 = 100 + 30.
  BreakEvenInput input;
  input.months = {{0, 100.0, 150, 50}};
  input.fixed_baseline = 30;
  check_factor(input, 130.0 / 150);
  // With a second month the other way round they cross again further up.
  input.months.push_back({0, 500.0, 50, 400});
  input.fixed_baseline = 30;
  const auto got = break_even_price_factor(input);
  REQUIRE(got.has_value());
  CHECK(*got == exactly(130.0 / 150));
}

TEST_CASE("of two levels equally near to today's price the lower one counts") {
  // The candidate's bill is flat at 100 up to x = 0.9 ... the baseline costs 60 + 40 x: they touch
  // where 60 + 40x = 100 at x = 1 only; with 15 fixed on the candidate, max(100, 100 x / 0.9 ...)
  // has two roots.
  BreakEvenInput input;
  input.months = {{0, 100.0, 0, 0}, {0, 20.0, 40, 0}};
  // Candidate: 100 + max(20, 40 x); baseline 100 + 20: equal on [0, 0.5] and never again.
  check_factor(input, 0.5);
}
