#include "wattweek/metering/levels.hpp"

#include <doctest/doctest.h>

#include <cmath>

#include "chance.hpp"
#include "made_measured.hpp"

namespace wattweek::metering {
namespace {

constexpr double kHour_s = 3600;

std::string states(const std::vector<Level>& levels) {
  const std::vector<std::string> names = {"off", "sleep", "idle", "active"};
  std::string all;
  for (const Level& level : levels) {
    all += (all.empty() ? "" : " ") + names[static_cast<std::size_t>(level.state)];
  }
  return all;
}

// Every watt and every hour belongs to one level.
std::vector<Level> sound_levels(const MadeMeasured& made) {
  const Measured& measured = made.measured();
  std::vector<Level> levels = levels_of(measured);
  double hours = 0;
  double wh = 0;
  for (std::size_t i = 0; i < levels.size(); ++i) {
    hours += levels[i].hours;
    wh += levels[i].hours * levels[i].watts;
    CHECK(levels[i].from_w == (i == 0 ? 0 : levels[i - 1].to_w));
    CHECK(levels[i].watts >= levels[i].from_w);
    CHECK(levels[i].watts < levels[i].to_w);
  }
  CHECK(hours == doctest::Approx(measured.kept.seconds / 3600).epsilon(1e-12));
  CHECK(wh == doctest::Approx(measured.kept.joules / 3600).epsilon(1e-12));
  CHECK(levels.back().to_w > measured.highest_w);
  return levels;
}

TEST_CASE("levels: off until the afternoon, then switched on") {
  MadeMeasured made;
  made.with_resolution(0.1).add(16.5 * kHour_s, 0.5).add(7.5 * kHour_s, 26.7);
  const std::vector<Level> levels = sound_levels(made);
  CHECK(states(levels) == "off idle");
  CHECK(levels[0].watts == doctest::Approx(0.5));
  CHECK(levels[0].hours == doctest::Approx(16.5));
  CHECK(levels[1].watts == doctest::Approx(26.7));
  CHECK(levels[1].hours == doctest::Approx(7.5));
}

TEST_CASE("levels: a machine that sleeps at night and works hard by day") {
  MadeMeasured made;
  made.with_resolution(0.1);
  Chance chance(1);
  for (int day = 0; day < 7; ++day) {
    for (int minute = 0; minute < 24 * 60; ++minute) {
      const bool asleep = minute >= 3 * 60 && minute < 10 * 60;
      made.add(60, to_steps(asleep ? 4.1 : 120 + 60 * chance.even(), 0.1));
    }
  }
  const std::vector<Level> levels = sound_levels(made);
  CHECK(states(levels) == "sleep idle");
  CHECK(levels[0].watts == doctest::Approx(4.1));
  CHECK(levels[0].hours == doctest::Approx(49));
  CHECK(levels[1].watts == doctest::Approx(150).epsilon(0.01));
}

TEST_CASE("levels: two steps of a coarse meter are one level") {
  MadeMeasured made;
  made.with_resolution(2);
  for (int minute = 0; minute < 24 * 60; ++minute) made.add(30, 9).add(30, 11);
  std::vector<Level> levels = sound_levels(made);
  CHECK(states(levels) == "idle");
  CHECK(levels[0].watts == doctest::Approx(10));

  // Nor are three steps, visited unevenly.
  Chance chance(2);
  MadeMeasured uneven;
  uneven.with_resolution(2);
  for (int minute = 0; minute < 24 * 60; ++minute) {
    uneven.add(60, 1 + to_steps(9.3 + 1.5 * chance.normal(), 2));
  }
  CHECK(states(sound_levels(uneven)) == "idle");
}

TEST_CASE("levels: what never changes is idle, or off") {
  MadeMeasured made;
  made.add(24 * kHour_s, 7.3);
  CHECK(states(sound_levels(made)) == "idle");
  MadeMeasured small;
  small.add(24 * kHour_s, 0.4);
  CHECK(states(sound_levels(small)) == "off");
}

TEST_CASE("levels: a router that is busy now and then does not sleep") {
  MadeMeasured made;
  made.with_resolution(0.1);
  Chance chance(3);
  double burst_s = 0;
  for (int step = 0; step < 3 * 24 * 360; ++step) {
    if (burst_s <= 0 && chance.even() < 0.01) burst_s = 10 + 110 * chance.even();
    made.add(10, to_steps((burst_s > 0 ? 6 : 4) + 0.08 * chance.normal(), 0.1));
    burst_s -= 10;
  }
  const std::vector<Level> levels = sound_levels(made);
  CHECK(states(levels) == "idle active");
  CHECK(levels[0].watts == doctest::Approx(4).epsilon(0.01));
  CHECK(levels[1].watts == doctest::Approx(6).epsilon(0.01));
}

TEST_CASE("levels: a small server that rests at 5 W between short jobs of 30 W does not sleep") {
  MadeMeasured made;
  for (int hour = 0; hour < 72; ++hour) made.add(56 * 60, 5).add(4 * 60, 30);
  const std::vector<Level> levels = sound_levels(made);
  CHECK(states(levels) == "idle active");
  CHECK(levels[0].watts == doctest::Approx(5));
}

// Idle 12 W, films at 15 W from 20 to 22 h, a backup at 22 W from 2:00 to 2:40, and spikes.
MadeMeasured home_server() {
  MadeMeasured made;
  made.with_resolution(0.1);
  Chance chance(4);
  for (int step = 0; step < 14 * 24 * 360; ++step) {
    const int of_day = step % (24 * 360);
    double watts = 12;
    if (of_day >= 20 * 360 && of_day < 22 * 360) watts = 15;
    if (of_day >= 2 * 360 && of_day < 2 * 360 + 240) watts = 22;
    watts += 0.3 * chance.normal();
    if (chance.even() < 0.002) watts = 30 + 30 * chance.even();
    made.add(10, to_steps(watts, 0.1));
  }
  return made;
}

TEST_CASE("levels: idle, films, backups, and spikes that are none") {
  const std::vector<Level> levels = sound_levels(home_server());
  CHECK(states(levels) == "idle active active");
  CHECK(levels[0].watts == doctest::Approx(12).epsilon(0.005));
  CHECK(levels[0].hours == doctest::Approx(14 * (22 - 2.0 / 3)).epsilon(0.01));
  CHECK(levels[1].watts == doctest::Approx(15).epsilon(0.01));
  CHECK(levels[1].hours == doctest::Approx(28).epsilon(0.02));
  CHECK(levels[2].to_w > 59);
}

TEST_CASE("levels: warming up is no level of its own") {
  MadeMeasured made;
  made.with_resolution(0.1);
  Chance chance(5);
  for (int day = 0; day < 5; ++day) {
    made.add(14 * kHour_s, 0.3);
    for (int minute = 0; minute < 10 * 60; ++minute) {
      const double warmer = std::min(1.0, minute / 60.0);
      made.add(60, to_steps(30 + warmer + 0.1 * chance.normal(), 0.1));
    }
  }
  const std::vector<Level> levels = sound_levels(made);
  CHECK(states(levels) == "off idle");
  CHECK(levels[1].watts == doctest::Approx(30.95).epsilon(0.001));
}

TEST_CASE("levels: days that are warmer than nights are one level") {
  MadeMeasured made;
  made.with_resolution(0.1);
  Chance chance(6);
  for (int minute = 0; minute < 10 * 1440; ++minute) {
    const double day = std::sin(2 * 3.14159265 * minute / 1440);
    made.add(60, to_steps(12 + 0.5 * day + 0.3 * chance.normal(), 0.1));
  }
  CHECK(states(sound_levels(made)) == "idle");
}

TEST_CASE("levels: nothing but 0 W is off, and nothing at all is no level") {
  MadeMeasured made;
  made.add(24 * kHour_s, 0);
  const std::vector<Level> levels = sound_levels(made);
  CHECK(states(levels) == "off");
  CHECK(levels[0].watts == 0);
  CHECK_FALSE(idle_of(levels, made.measured()));
  CHECK_FALSE(awake_from_w(levels));
  CHECK(levels_of(Measured{}).empty());
}

TEST_CASE("levels: off, asleep, idle and active in one day") {
  MadeMeasured made;
  for (int day = 0; day < 7; ++day) {
    made.add(8 * kHour_s, 0.3).add(4 * kHour_s, 1.8).add(9 * kHour_s, 40).add(3 * kHour_s, 75);
  }
  const std::vector<Level> levels = sound_levels(made);
  CHECK(states(levels) == "off sleep idle active");
  // Rest and wake part where no parcel lies on both sides.
  REQUIRE(awake_from_w(levels));
  CHECK(bin_of(*awake_from_w(levels)) % kBinsOfClass == 0);
  CHECK(*awake_from_w(levels) == levels[2].from_w);
}

TEST_CASE("levels: a short plateau below idle counts to it") {
  MadeMeasured made;
  for (int day = 0; day < 7; ++day) made.add(0.5 * kHour_s, 14).add(23.5 * kHour_s, 25);
  const std::vector<Level> levels = sound_levels(made);
  CHECK(states(levels) == "idle");
}

TEST_CASE("levels: two watts apart at 30 W are two levels to a good meter") {
  MadeMeasured made;
  made.with_resolution(0.1);
  Chance chance(7);
  for (int minute = 0; minute < 7 * 1440; ++minute) {
    const bool film = minute % 1440 >= 1260;
    made.add(60, to_steps((film ? 32 : 30) + 0.15 * chance.normal(), 0.1));
  }
  const std::vector<Level> levels = sound_levels(made);
  CHECK(states(levels) == "idle active");
  CHECK(levels[0].watts == doctest::Approx(30).epsilon(0.001));
}

}  // namespace
}  // namespace wattweek::metering
