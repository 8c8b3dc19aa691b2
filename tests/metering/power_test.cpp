// Samples of power: each holds until the next one, holes are dropped whole.

#include <doctest/doctest.h>

#include <cmath>

#include "logs.hpp"

namespace wattweek::tests {
namespace {

using doctest::Approx;

/// Rows every `step_s` from `from_s`, each with these watts.
void append(std::vector<At>& rows, int count, double from_s, double step_s, double watts) {
  for (int i = 0; i < count; ++i) rows.push_back({from_s + i * step_s, watts});
}

TEST_CASE("a sample of power holds until the next one and the last has no time") {
  const auto got = measured(log_of({{0, 10}, {60, 20}, {180, 5}, {200, 1000}}), kPower);
  CHECK(energy_wh(got) == Approx((10 * 60 + 20 * 120 + 5 * 20) / 3600.0));
  CHECK(got.coverage.covered_hours == Approx(200 / 3600.0));
  CHECK(got.coverage.dropped_hours == 0);
  CHECK(got.measured.kept.mean_w() == Approx(3100.0 / 200));
  CHECK(got.measured.lowest_w == 5);
  CHECK(got.measured.highest_w == 20);
  CHECK(got.coverage.readings == 4);
  CHECK(got.coverage.first_us == monday_plus(0));
  CHECK(got.coverage.last_us == monday_plus(200));
}

TEST_CASE("where no gap is given it is 300 s for short steps and a hole is dropped whole") {
  std::vector<At> rows;
  append(rows, 10, 0, 60, 10);
  append(rows, 10, 540 + 300, 60, 10);       // 300 s: kept.
  append(rows, 10, 1380 + 300.001, 60, 10);  // A millisecond more: a hole.
  const auto got = measured(log_of(rows), kPower);
  CHECK(got.coverage.gap_s == 300);
  CHECK(got.coverage.typical_step_s == 60);
  CHECK(got.coverage.longest_step_s == Approx(300.001));
  CHECK(got.coverage.longest_step_at_us == monday_plus(1380));
  CHECK(got.coverage.dropped_hours == Approx(300.001 / 3600));
  CHECK(got.coverage.covered_hours == Approx((1380 + 540) / 3600.0));
  CHECK(energy_wh(got) == Approx(10 * (1380 + 540) / 3600.0));
}

TEST_CASE("where no gap is given it is three typical steps for long ones") {
  std::vector<At> rows;
  append(rows, 20, 0, 900, 10);
  append(rows, 20, 19 * 900 + 2700, 900, 10);
  append(rows, 20, 38 * 900 + 2 * 2700 + 1, 900, 10);
  const auto got = measured(log_of(rows), kPower);
  CHECK(got.coverage.gap_s == 2700);
  CHECK(got.coverage.dropped_hours == Approx(2701 / 3600.0));
  CHECK(got.coverage.covered_hours == Approx((57 * 900 + 2700) / 3600.0));
}

TEST_CASE("a gap that is given rules whether it is short or long") {
  const auto log = log_of({{0, 10}, {10, 10}, {30, 10}, {1030, 10}, {1040, 10}});
  const auto of = [&](double gap_s) { return measured(log, kPower, {{}, gap_s, {}}).coverage; };
  CHECK(of(10).covered_hours == Approx(20 / 3600.0));
  CHECK(of(20).covered_hours == Approx(40 / 3600.0));
  CHECK(of(1000).covered_hours == Approx(1040 / 3600.0));
  CHECK(of(1000).gap_s == 1000);
}

TEST_CASE("a reading without a value ends the one before and starts nothing") {
  const auto got = measured(
      log_of({{0, kNothing}, {60, 10}, {120, kNothing}, {180, kNothing}, {240, 30}, {300, 1}}),
      kPower);
  CHECK(energy_wh(got) == Approx((10 * 60 + 30 * 60) / 3600.0));
  CHECK(got.coverage.readings == 3);
  CHECK(got.coverage.covered_hours == Approx(120 / 3600.0));
  CHECK(got.coverage.dropped_hours == Approx(180 / 3600.0));
  CHECK(got.coverage.first_us == monday_plus(0));
}

TEST_CASE("the typical step of an even count is the mean of the middle two") {
  CHECK(measured(log_of({{0, 1}, {6, 1}, {13.5, 1}, {13.75, 1}, {100, 1}}), kPower)
            .coverage.typical_step_s == Approx(6.75));
  CHECK(measured(log_of({{0, 1}, {400, 1}, {1000, 1}}), kPower).coverage.typical_step_s == 500);
  CHECK(measured(log_of({{0, 1}}), kPower).coverage.typical_step_s == 0);
}

TEST_CASE("an interval over the hour of the clock is split where the hour ends") {
  const auto got = measured(log_of({{3500, 36}, {3700, 72}, {3800, 0}}), kPower);
  CHECK(hour(got, 0).seconds == Approx(100));
  CHECK(hour(got, 0).joules == Approx(3600));
  CHECK(hour(got, 1).seconds == Approx(200));
  CHECK(hour(got, 1).joules == Approx(3600 + 7200));
}

TEST_CASE("hours are those of a clock that is half an hour apart") {
  const metering::MeasuringOptions options{{std::chrono::minutes{330}, {}}, {}, {}};
  const auto got = measured(log_of({{0, 10}, {1800, 10}, {5400, 10}, {6000, 10}}), kPower, options);
  CHECK(hour(got, 5).seconds == Approx(1800));
  CHECK(hour(got, 6).seconds == Approx(3600));
  CHECK(hour(got, 7).seconds == Approx(600));
}

TEST_CASE("an hour that the clocks show twice holds both and a skipped one has nothing") {
  using std::chrono::hours;
  const calendar::Instant monday{std::chrono::seconds{kMonday_us / 1'000'000}};
  const calendar::ZoneRules zone{hours{2},
                                 {{monday + hours{2}, hours{1}}, {monday + hours{5}, hours{2}}}};
  std::vector<At> rows;
  append(rows, 8 * 6 + 1, 0, 600, 10);
  const auto got = measured(log_of(rows), kPower, {zone, {}, {}});
  CHECK(hours_of(hour(got, 2)) == Approx(1));
  CHECK(hours_of(hour(got, 3)) == Approx(2));
  CHECK(hours_of(hour(got, 5)) == Approx(1));
  CHECK(hours_of(hour(got, 6)) == 0);
  CHECK(hours_of(hour(got, 7)) == Approx(1));
}

TEST_CASE("the longest time at 0 W is found over short and long intervals alike") {
  std::vector<At> rows{{0, 0}, {60, 0}, {120, 5}, {180, 0}, {240, 0}};
  rows.push_back({1140, 0});  // 900 s at 0 W: whether it counts is known at the end.
  rows.push_back({1200, 0});
  rows.push_back({1260, 3});
  append(rows, 3, 1320, 900, 2);
  const auto log = log_of(rows);
  const auto kept = measured(log, kPower, {{}, 1000.0, {}}).coverage;
  CHECK(kept.longest_zero_s == 1080);
  CHECK(kept.longest_zero_at_us == monday_plus(180));
  const auto dropped = measured(log, kPower).coverage;
  CHECK(dropped.longest_zero_s == 120);
  CHECK(dropped.longest_zero_at_us == monday_plus(0));
}

TEST_CASE("the longest time at 0 W joins what waited for the end of the log") {
  std::vector<At> rows;
  append(rows, 40, 0, 400, 7);
  append(rows, 1, 16'000, 0, 0);  // 100 s, 900 s, 100 s at 0 W: the gap is 1200 s.
  append(rows, 1, 16'100, 0, 0);
  append(rows, 1, 17'000, 0, 0);
  append(rows, 1, 17'100, 0, 7);
  const auto got = measured(log_of(rows), kPower).coverage;
  CHECK(got.gap_s == 1200);
  CHECK(got.longest_zero_s == 1100);
  CHECK(got.longest_zero_at_us == monday_plus(16'000));
}

TEST_CASE("a log of one reading or of none covers nothing") {
  const auto none = measured({}, kPower);
  CHECK(none.coverage.readings == 0);
  CHECK(none.coverage.span_hours() == 0);
  CHECK(none.measured.hours.empty());
  CHECK(none.measured.parcels.empty());
  CHECK(none.measured.designs.size() == 1);
  const auto one = measured(log_of({{5, 10}}), kPower);
  CHECK(one.coverage.readings == 1);
  CHECK(one.coverage.covered_hours == 0);
  CHECK(one.coverage.first_us == monday_plus(5));
  CHECK(one.coverage.last_us == monday_plus(5));
}

TEST_CASE("watts that no plug reads are no value") {
  const auto got =
      measured(log_of({{0, 10}, {60, 1.1e6}, {120, -1}, {180, 1e6}, {240, 0}}), kPower);
  CHECK(got.coverage.readings == 3);
  CHECK(got.coverage.covered_hours == Approx(120 / 3600.0));
  CHECK(got.measured.highest_w == 1e6);
}

}  // namespace
}  // namespace wattweek::tests
