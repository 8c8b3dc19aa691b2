#include <doctest/doctest.h>

#include <cmath>

#include "chance.hpp"
#include "made_measured.hpp"
#include "wattweek/metering/levels.hpp"

namespace wattweek::metering {
namespace {

constexpr double kHour_s = 3600;

double rounding_w(const MadeMeasured& made) {
  return rounding_error_w(made.measured(), levels_of(made.measured()).front());
}

TEST_CASE(
    "idle: the middle of the idle level, with independent minutes as sure as their number says") {
  MadeMeasured made;
  Chance chance(1);
  double sum = 0;
  for (int minute = 0; minute < 14 * 1440; ++minute) {
    const double watts = 12 + 0.3 * chance.normal();
    made.add(60, watts);
    sum += watts;
  }
  const auto idle = idle_of(levels_of(made.measured()), made.measured());
  REQUIRE(idle);
  CHECK(std::abs(idle->value - sum / (14 * 1440)) < 0.001);
  const double right = 0.3 / std::sqrt(14 * 1440.0);
  CHECK(idle->standard_error > 0.75 * right);
  CHECK(idle->standard_error < 1.25 * right);
}

TEST_CASE("idle: minutes that err together count for less") {
  MadeMeasured made;
  Chance chance(2);
  FadingNoise noise(0.3, 1200, 60);
  for (int minute = 0; minute < 14 * 1440; ++minute) made.add(60, 12 + noise.next(chance));
  const auto idle = idle_of(levels_of(made.measured()), made.measured());
  REQUIRE(idle);
  // Long-run variance of an autoregression: (1 + r) / (1 - r) of the variance.
  const double r = std::exp(-60.0 / 1200);
  const double right = 0.3 * std::sqrt((1 + r) / (1 - r) / (14 * 1440));
  CHECK(idle->standard_error > 0.75 * right);
  CHECK(idle->standard_error < 1.25 * right);
}

TEST_CASE("idle: work too slight for a level of its own does not lift it") {
  MadeMeasured made;
  Chance chance(4);
  for (int minute = 0; minute < 14 * 1440; ++minute) {
    const bool works = minute % 1440 < 72;  // One minute in twenty, 4 W.
    made.add(60, 12 + (works ? 4 : 0) + 0.9 * chance.normal());
  }
  const std::vector<Level> levels = levels_of(made.measured());
  REQUIRE(levels.size() == 1);
  CHECK(levels[0].watts > 12.15);
  CHECK(std::abs(idle_of(levels, made.measured())->value - 12) < 0.06);
}

TEST_CASE("idle: a constant reading is off by up to half a step") {
  MadeMeasured made;
  made.with_resolution(1).add(24 * kHour_s, 12);
  const auto idle = idle_of(levels_of(made.measured()), made.measured());
  REQUIRE(idle);
  CHECK(idle->value == 12);
  CHECK(idle->standard_error == doctest::Approx(1 / std::sqrt(12.0)));
  MadeMeasured unknown;
  unknown.add(24 * kHour_s, 12);
  CHECK(idle_of(levels_of(unknown.measured()), unknown.measured())->standard_error == 0);
}

TEST_CASE("rounding: two neighbouring steps leave less than half a step") {
  MadeMeasured even;
  even.with_resolution(1);
  for (int minute = 0; minute < 1440; ++minute) even.add(30, 12).add(30, 13);
  // Seen evenly, both ways of being off are equal; noise of 0.41 steps is what the variance 1/4
  // less 1/12 says: sqrt(exp(-4 pi^2 / 6) / (2 pi^2)) = 0.0084.
  CHECK(rounding_w(even) == doctest::Approx(0.0084).epsilon(0.01));
  MadeMeasured uneven;
  uneven.with_resolution(1);
  for (int minute = 0; minute < 1440; ++minute) uneven.add(48, 12).add(12, 13);
  CHECK(rounding_w(uneven) == doctest::Approx(0.3 / std::sqrt(3.0)));
}

TEST_CASE("rounding: counters keep what a step leaves out") {
  MadeMeasured made;
  made.with_resolution(6);
  for (int minute = 0; minute < 1440; ++minute) made.add(60, minute % 3 == 0 ? 18 : 12);
  CHECK(rounding_w(made) > 0.1);
  Measured counted = made.measured();
  counted.carries_rest = true;
  const std::vector<Level> levels = levels_of(counted);
  CHECK(rounding_error_w(counted, levels.front()) == 0);
}

TEST_CASE("rounding: what uses add is no noise that would help idle") {
  // 12 W and nothing else while nothing is in use, 14 W for half of the time: as one level, the
  // readings spread; of idle alone they do not.
  MadeMeasured made;
  made.with_resolution(1);
  for (int hour = 0; hour < 24; ++hour) made.add(1800, 12).add(1800, 14);
  Measured all = made.measured();
  const Level level{State::idle, 13, 24, 0, 1e6};
  CHECK(rounding_error_of_unused_w(all, level) == rounding_error_w(all, level));
  CHECK(rounding_error_w(all, level) < 0.01);
  all.unused.resize(all.histogram.size());
  all.unused[bin_of(12)] = all.histogram[bin_of(12)];
  CHECK(rounding_error_of_unused_w(all, level) == doctest::Approx(1 / std::sqrt(12.0)));
}

TEST_CASE("rounding: noise as wide as a step leaves nothing") {
  MadeMeasured made;
  made.with_resolution(1);
  Chance chance(3);
  for (int minute = 0; minute < 7 * 1440; ++minute) {
    made.add(60, to_steps(30.3 + chance.normal(), 1));
  }
  CHECK(rounding_w(made) < 1e-6);
}

}  // namespace
}  // namespace wattweek::metering
