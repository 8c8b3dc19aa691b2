// Logs by chance whose truth is known: it must lie in the 95 % interval in 90 to 99 % of all runs.
// Noise that lasts from seconds to 20 minutes, readings to 0.1 and 1 W, holes.

#include <doctest/doctest.h>

#include <cmath>

#include "chance.hpp"
#include "made_measured.hpp"
#include "wattweek/metering/forecast.hpp"
#include "wattweek/metering/levels.hpp"
#include "wattweek/metering/regression.hpp"

namespace wattweek::metering {
namespace {

constexpr int kRuns = 500;
constexpr double kDay_s = 86400;
constexpr double kCell_s = 300;

struct Truth {
  double idle_w = 0;
  double stream_w = 0;
  double backup_w = 0;
};

struct Noise {
  double sd_w = 0;
  double memory_s = 0;
  double step_w = 0;  // Of the meter.
};

// Streaming of an evening, up to three streams; backups at any time; ten days.
class Home {
 public:
  Home(int run, const Noise& noise)
      : chance_(static_cast<std::uint64_t>(run)),
        noise_(noise.sd_w, noise.memory_s, kCell_s),
        step_w_(noise.step_w),
        truth_{10 + 5 * chance_.even(), 5 + 3 * chance_.even(), 30 + 5 * chance_.even()},
        made_(kCell_s) {
    std::vector<Eigen::VectorXd> designs;
    for (const double backup : {0.0, 1.0}) {
      for (const double streams : {0.0, 1.0, 2.0}) {
        designs.emplace_back(Eigen::Vector2d(streams, backup));
      }
    }
    made_.with_designs(designs).with_resolution(step_w_);
    while (made_.at_s() < 10 * kDay_s) go_on();
  }

  const Truth& truth() const { return truth_; }
  const Measured& measured() const { return made_.measured(); }

 private:
  void go_on() {
    if (chance_.even() < 0.001) made_.skip(kCell_s * std::floor(1 + 40 * chance_.even()));
    const double of_day_s = std::fmod(made_.at_s(), kDay_s);
    if (of_day_s < kCell_s) {
      from_s_ = (17 + 3 * chance_.even()) * 3600;
      to_s_ = from_s_ + (1 + 2 * chance_.even()) * 3600;
      streams_ = chance_.even() < 0.3 ? 2 : 1;
    }
    if (backup_s_ <= 0 && chance_.even() < 0.008) backup_s_ = 900 + 3600 * chance_.even();
    const bool backup = backup_s_ > 0;
    const std::size_t streams = of_day_s >= from_s_ && of_day_s < to_s_ ? streams_ : 0;
    const double watts = truth_.idle_w + truth_.stream_w * static_cast<double>(streams) +
                         (backup ? truth_.backup_w : 0) + noise_.next(chance_);
    made_.add(kCell_s, to_steps(watts, step_w_), streams + (backup ? 3 : 0));
    backup_s_ -= kCell_s;
  }

  Chance chance_;
  FadingNoise noise_;
  double step_w_;
  Truth truth_;
  MadeMeasured made_;
  double from_s_ = 0;
  double to_s_ = 0;
  std::size_t streams_ = 1;
  double backup_s_ = 0;
};

// How often it held the truth.
class HeldTruth {
 public:
  void count(const std::optional<Estimate>& estimate, double truth) {
    ++runs_;
    if (!estimate) return;
    if (std::abs(estimate->value - truth) <= 1.96 * estimate->standard_error) ++inside_;
  }
  double part() const { return static_cast<double>(inside_) / runs_; }

 private:
  int runs_ = 0;
  int inside_ = 0;
};

void check_covers(const std::string& what, const HeldTruth& coverage) {
  CAPTURE(what);
  CHECK(coverage.part() >= 0.9);
  CHECK(coverage.part() <= 0.99);
}

// Each kind of noise by turns.
constexpr Noise kNoises[] = {{0.3, 10, 0},  {0.3, 300, 0.1}, {0.3, 1200, 0.1}, {0.5, 60, 1},
                             {0.7, 300, 1}, {0.7, 1200, 1},  {0.2, 1200, 0}};

TEST_CASE("coverage: idle and increments lie in their intervals in 90 to 99 % of 500 logs") {
  HeldTruth idle_alone;
  HeldTruth idle;
  HeldTruth stream;
  HeldTruth backup;
  for (int run = 0; run < kRuns; ++run) {
    const Home home(run, kNoises[static_cast<std::size_t>(run) % std::size(kNoises)]);
    const std::vector<Level> levels = levels_of(home.measured());
    idle_alone.count(idle_of(levels, home.measured()), home.truth().idle_w);
    const Regression fit = regress(home.measured(), {"streaming", "backup"}, levels);
    idle.count(fit.idle_w, home.truth().idle_w);
    stream.count(fit.increments[0].each_w, home.truth().stream_w);
    backup.count(fit.increments[1].each_w, home.truth().backup_w);
  }
  check_covers("idle without activity", idle_alone);
  check_covers("idle", idle);
  check_covers("streaming", stream);
  check_covers("backup", backup);
}

// Then nothing in its own time tells how much two uses differ: the rest of the log must.
TEST_CASE("coverage: the increment of a workload that was used once, for 40 minutes") {
  HeldTruth increment;
  for (int run = 0; run < 300; ++run) {
    Chance chance(static_cast<std::uint64_t>(20000 + run));
    FadingNoise noise(0.5, run % 2 == 0 ? 10 : 300, 60);
    MadeMeasured made;
    made.with_designs({Eigen::VectorXd::Zero(1), Eigen::VectorXd::Ones(1)});
    for (int minute = 0; minute < 2880; ++minute) {
      const bool used = minute >= 1300 && minute < 1340;
      made.add(60, (used ? 29 : 20) + noise.next(chance), used ? 1 : 0);
    }
    const Regression fit = regress(made.measured(), {"backup"}, levels_of(made.measured()));
    increment.count(fit.increments[0].each_w, 9);
  }
  check_covers("used once", increment);
}

TEST_CASE("coverage: the year lies in its interval in 90 to 99 % of 500 logs") {
  HeldTruth year;
  for (int run = 0; run < kRuns; ++run) {
    Chance chance(static_cast<std::uint64_t>(10000 + run));
    const int weeks = 2 + run % 7;
    MadeMeasured made(3600, kMondayHour + 24 * (run % 7) + run % 24);
    made.skip(chance.even() * 3600);
    FadingNoise slow(1, 6 * 3600, 3600);
    for (int week = 0; week < weeks; ++week) {
      const double of_week_w = 1.5 * chance.normal();
      for (int hour = 0; hour < 168; ++hour) {
        const double watts = 30 + (hour % 24 < 7 ? -5 : 0) + of_week_w + slow.next(chance);
        // Holes of an hour, but for the first and the last week, so that each hour is seen.
        const bool hole = week > 0 && week + 1 < weeks && chance.even() < 0.05;
        if (hole) {
          made.skip(3600);
        } else {
          made.add(3600, std::max(0.0, watts));
        }
      }
    }
    const double truth_kwh = (30 - 5 * 7.0 / 24) * 8.76;
    const YearForecast found = forecast(made.measured(), week_of(made.measured()), {});
    REQUIRE(found.low);
    const double half = (*found.high - *found.low) / 2;
    year.count(Estimate{*found.energy_kwh, half / 1.96}, truth_kwh);
  }
  check_covers("year", year);
}

}  // namespace
}  // namespace wattweek::metering
