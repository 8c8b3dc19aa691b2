// Energy of intervals, whose stamps name the start or the end.

#include <doctest/doctest.h>

#include "logs.hpp"

namespace wattweek::tests {
namespace {

using doctest::Approx;

TEST_CASE("energy stamped at the start lasts until the next stamp and the last a typical step") {
  const auto got = measured(log_of({{900, 5}, {1800, 10}, {2700, 1}}), kEnergyFrom);
  CHECK(energy_wh(got) == Approx(16));
  CHECK(got.coverage.first_us == monday_plus(900));
  CHECK(got.coverage.last_us == monday_plus(3600));
  CHECK(got.coverage.covered_hours == Approx(0.75));
  CHECK(got.coverage.dropped_hours == 0);
  CHECK(got.measured.lowest_w == Approx(4));
  CHECK(got.measured.highest_w == Approx(40));
}

TEST_CASE("energy stamped at the end began at the stamp before and the first a typical step ago") {
  const auto got = measured(log_of({{900, 5}, {1800, 10}, {2700, 1}}), kEnergyUntil);
  CHECK(energy_wh(got) == Approx(16));
  CHECK(got.coverage.first_us == monday_plus(0));
  CHECK(got.coverage.last_us == monday_plus(2700));
  REQUIRE(got.measured.parcels.size() == 3);
  CHECK(got.measured.parcels.front().minute == 0);
  CHECK(got.measured.parcels.front().drawn.mean_w() == Approx(20));
  CHECK(got.measured.parcels.back().minute == 30);
}

TEST_CASE("energy without a value drops the interval that it would belong to") {
  const auto log = log_of({{0, 1}, {900, kNothing}, {1800, 4}, {2700, 8}});
  const auto from = measured(log, kEnergyFrom);
  CHECK(energy_wh(from) == Approx(13));
  CHECK(from.coverage.covered_hours == Approx(0.75));
  CHECK(from.coverage.dropped_hours == Approx(0.25));
  const auto until = measured(log, kEnergyUntil);
  CHECK(energy_wh(until) == Approx(13));
  CHECK(hour(until, 0).seconds == Approx(1800));
  CHECK(until.coverage.dropped_hours == Approx(0.25));
}

TEST_CASE("energy of an interval longer than the gap is dropped with it") {
  const auto log = log_of({{0, 1}, {900, 1}, {1800, 1}, {5400, 1}, {6300, 1}});
  CHECK(energy_wh(measured(log, kEnergyFrom)) == Approx(4));
  CHECK(energy_wh(measured(log, kEnergyFrom, {{}, 3600.0, {}})) == Approx(5));
}

TEST_CASE("energy that asks for more watts than a plug has is dropped") {
  const auto got = measured(log_of({{0, 1}, {60, 2e4}, {120, 1}}), kEnergyFrom);
  CHECK(energy_wh(got) == Approx(2));
  CHECK(got.coverage.dropped_hours == Approx(60 / 3600.0));
}

TEST_CASE("energy of a single stamp has no length and nothing is covered") {
  CHECK(measured(log_of({{0, 5}}), kEnergyFrom).coverage.covered_hours == 0);
  CHECK(measured(log_of({{0, 5}}), kEnergyUntil).coverage.covered_hours == 0);
}

TEST_CASE("0 W before the first stamp of an interval's end joins the 0 W that follow") {
  const auto got = measured(log_of({{900, 0}, {1800, 0}, {2700, 3}, {3600, 3}}), kEnergyUntil);
  CHECK(got.coverage.longest_zero_s == 1800);
  CHECK(got.coverage.longest_zero_at_us == monday_plus(0));
  const auto brief = measured(log_of({{60, 0}, {120, 0}, {180, 3}, {240, 3}}), kEnergyUntil);
  CHECK(brief.coverage.longest_zero_s == 120);
  const auto last = measured(log_of({{60, 3}, {120, 0}, {180, 0}, {240, 0}}), kEnergyFrom);
  CHECK(last.coverage.longest_zero_s == 180);
}

}  // namespace
}  // namespace wattweek::tests
