// Counters: mean watts between readings, coarse ticks spread.

#include <doctest/doctest.h>

#include <cmath>

#include "logs.hpp"

namespace wattweek::tests {
namespace {

using doctest::Approx;

/// What a counter with ticks of `tick_wh` shows every `step_s` of a device that draws `watts(s)`.
template <class Watts>
std::vector<At> counted(double tick_wh, double step_s, double until_s, const Watts& watts) {
  std::vector<At> rows;
  double drawn_wh = 0;
  for (double s = 0; s <= until_s; s += step_s) {
    rows.push_back({s, 5000 + std::floor(drawn_wh / tick_wh + 1e-9) * tick_wh});
    drawn_wh += watts(s) * step_s / 3600;
  }
  return rows;
}

TEST_CASE("a counter gives the mean watts between two readings whatever the gap") {
  const auto got = measured(log_of({{0, 100}, {60, 101}, {36'060, 601}, {36'120, 601.5}}), kCounter,
                            {{}, 100.0, {}});
  CHECK(energy_wh(got) == Approx(501.5));
  CHECK(got.coverage.covered_hours == Approx(36'120 / 3600.0));
  CHECK(got.coverage.dropped_hours == 0);
  CHECK(std::isinf(got.coverage.gap_s));
  CHECK(got.measured.lowest_w == Approx(30));
  CHECK(got.measured.highest_w == Approx(60));
}

TEST_CASE("an interval of more than an hour counts in the totals alone") {
  const auto got = measured(log_of({{0, 100}, {3600, 150}, {7237, 250}}), kCounter);
  CHECK(energy_wh(got) == Approx(150));
  CHECK(hours_of(got.measured.kept) == Approx(7237 / 3600.0));
  CHECK(hour(got, 0).joules == Approx(50 * 3600));
  CHECK(hour(got, 1).seconds == 0);
  REQUIRE(got.measured.parcels.size() == 1);
  CHECK(got.measured.parcels.front().drawn.joules == Approx(50 * 3600));
  double binned_s = 0;
  for (const auto& bin : got.measured.histogram) binned_s += bin.seconds;
  CHECK(binned_s == Approx(3600));
}

TEST_CASE("a coarse tick is spread over the time since the last") {
  // 10 W move a counter of 10 Wh once an hour; read each minute.
  const auto got =
      measured(log_of(counted(10, 60, 6 * 3600, [](double) { return 10.0; })), kCounter);
  CHECK(energy_wh(got) == Approx(60));
  CHECK(got.measured.lowest_w == Approx(10));
  CHECK(got.measured.highest_w == Approx(10));
  for (int h = 0; h < 6; ++h) CHECK(hour(got, h).joules == Approx(10 * 3600));
}

TEST_CASE("a coarse tick of more than an hour is in the totals and in no hour") {
  const auto got =
      measured(log_of(counted(10, 60, 8 * 3600, [](double) { return 5.0; })), kCounter);
  CHECK(energy_wh(got) == Approx(40));
  CHECK(hours_of(got.measured.kept) == Approx(8));
  CHECK(got.measured.hours.empty());
}

TEST_CASE("a fall of a counter is a restart whose interval is dropped") {
  const auto got =
      measured(log_of({{0, 700}, {60, 701}, {120, 702}, {180, 0}, {240, 0.5}, {300, 3}}), kCounter);
  CHECK(got.coverage.restarts == 1);
  CHECK(energy_wh(got) == Approx(5));
  CHECK(got.coverage.dropped_hours == Approx(60 / 3600.0));
  CHECK(got.coverage.covered_hours == Approx(240 / 3600.0));
}

TEST_CASE("a counter's energy is its last reading less its first, also where it stands still") {
  const auto got = measured(
      log_of({{0, 700}, {60, 702}, {120, 702}, {180, 703}, {240, 703}, {300, 703}}), kCounter);
  CHECK(energy_wh(got) == Approx(3));
  CHECK(got.coverage.covered_hours == Approx(300 / 3600.0));
  CHECK(got.coverage.longest_zero_s == 120);
  CHECK(got.coverage.longest_zero_at_us == monday_plus(180));
}

TEST_CASE("rows of a counter without a value are passed over") {
  const auto got =
      measured(log_of({{0, kNothing}, {60, 100}, {120, kNothing}, {180, 104}}), kCounter);
  CHECK(energy_wh(got) == Approx(4));
  CHECK(got.coverage.readings == 2);
  CHECK(got.measured.highest_w == Approx(120));
  CHECK(got.coverage.first_us == monday_plus(0));
  CHECK(got.coverage.dropped_hours == Approx(60 / 3600.0));
}

TEST_CASE("a rise that no plug could carry is dropped") {
  const auto got = measured(log_of({{0, 100}, {60, 101}, {120, 30'000}, {180, 30'001}}), kCounter);
  CHECK(energy_wh(got) == Approx(2));
  CHECK(got.coverage.dropped_hours == Approx(60 / 3600.0));
}

// A device that is off from 1 h to 9 h and draws 90 W else, on a counter of 0.01 Wh: what it drew
// in the first minute after is no eight hours' draw.
TEST_CASE("a fine counter that stood still while the device was off has 0 W for that time") {
  const auto log = log_of(counted(0.01, 60, 10 * 3600,
                                  [](double s) { return s < 3600 || s >= 9 * 3600 ? 90.0 : 0.0; }));
  const auto got = measured(log, kCounter);
  CHECK(energy_wh(got) == Approx(180));
  CHECK(got.coverage.longest_zero_s == Approx(8 * 3600));
  CHECK(got.coverage.longest_zero_at_us == monday_plus(3600));
  CHECK(got.measured.highest_w == Approx(90));
  CHECK(hour(got, 9).joules == Approx(90 * 3600));
}

TEST_CASE("a fine counter tells the hours in which a device was off") {
  // A minute that is half on makes the smallest rise.
  const auto log = log_of(counted(0.01, 60, 10 * 3600, [](double s) {
    if (s >= 3540 && s < 3600) return 45.0;
    return s < 3600 || s >= 9 * 3600 ? 90.0 : 0.0;
  }));
  const auto got = measured(log, kCounter);
  for (int h = 1; h < 9; ++h) {
    CHECK(hours_of(hour(got, h)) == Approx(1));
    CHECK(hour(got, h).joules == 0);
  }
  CHECK(hour(got, 0).joules == Approx(90 * 3600 - 45 * 60));
}

TEST_CASE("a tick of 1 Wh after a night tells the night's hours to within 1 W") {
  const auto log = log_of(
      counted(1, 60, 12 * 3600, [](double s) { return s < 7200 || s >= 10 * 3600 ? 30.0 : 0.05; }));
  const auto got = measured(log, kCounter);
  for (int h = 0; h < 12; ++h) {
    CAPTURE(h);
    CHECK(hours_of(hour(got, h)) == Approx(1));
    CHECK(std::abs(hour(got, h).joules / 3600 - (h < 2 || h >= 10 ? 30.0 : 0.05)) <= 1);
  }
}

TEST_CASE("readings more than an hour apart tell no hour however fine the counter") {
  const auto got = measured(
      log_of({{0, 100}, {60, 100.01}, {120, 100.01}, {9000, 100.01}, {9060, 101}}), kCounter);
  CHECK(energy_wh(got) == Approx(1));
  CHECK(hours_of(got.measured.kept) == Approx(9060 / 3600.0));
  CHECK(hour(got, 1).seconds == 0);
}

}  // namespace
}  // namespace wattweek::tests
