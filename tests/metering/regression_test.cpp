#include "wattweek/metering/regression.hpp"

#include <doctest/doctest.h>

#include <Eigen/LU>
#include <cmath>

#include "chance.hpp"
#include "made_measured.hpp"
#include "wattweek/metering/levels.hpp"
#include "wattweek/metering/long_run.hpp"

namespace wattweek::metering {
namespace {

using Eigen::Index;

Eigen::VectorXd units(std::initializer_list<double> all) {
  Eigen::VectorXd row(static_cast<Index>(all.size()));
  Index i = 0;
  for (const double one : all) row(i++) = one;
  return row;
}

constexpr double kHour_s = 3600;

Level all_idle() { return {State::idle, 10, 1, 0, 1e6}; }

MadeMeasured two_workloads() {
  MadeMeasured made;
  made.with_designs({units({0, 0}), units({1, 0}), units({0, 1}), units({2, 1})});
  return made;
}

TEST_CASE("regression: watts that follow the law give it back") {
  // Idle 12 W, 6 W for each stream, 9 W for a backup.
  MadeMeasured made = two_workloads();
  made.add(10 * kHour_s, 12, 0).add(2 * kHour_s, 18, 1).add(kHour_s, 21, 2).add(kHour_s, 33, 3);
  made.add(5 * kHour_s, 12, 0);
  const Regression fit = regress(made.measured(), {"streaming", "backup"}, {all_idle()});
  REQUIRE(fit.idle_w);
  CHECK(fit.idle_w->value == doctest::Approx(12).epsilon(1e-12));
  CHECK(fit.idle_w->standard_error < 1e-9);
  REQUIRE(fit.increments.size() == 2);
  CHECK(fit.increments[0].workload == "streaming");
  CHECK(fit.increments[0].each_w->value == doctest::Approx(6).epsilon(1e-12));
  CHECK(fit.increments[0].unit_hours == doctest::Approx(4));  // 2 x 1 + 1 x 2
  CHECK(fit.increments[1].workload == "backup");
  CHECK(fit.increments[1].each_w->value == doctest::Approx(9).epsilon(1e-12));
  CHECK(fit.increments[1].unit_hours == doctest::Approx(2));
  CHECK_FALSE(fit.increments[0].in_step_with_idle);
  CHECK(fit.increments[0].in_step_with.empty());
  CHECK(fit.residuals.explained == doctest::Approx(1));
}

TEST_CASE("regression: time weighs") {
  MadeMeasured made;
  made.with_designs({units({0}), units({1})});
  made.add(3 * kHour_s, 10, 0).add(kHour_s, 14, 0).add(kHour_s, 20, 1);
  const Regression fit = regress(made.measured(), {"streaming"}, {all_idle()});
  CHECK(fit.idle_w->value == doctest::Approx(11));  // (3 x 10 + 14) / 4
  CHECK(fit.increments[0].each_w->value == doctest::Approx(9));
}

TEST_CASE("regression: workloads in step are named, and not split") {
  MadeMeasured made;
  // Photos always run beside a backup; streaming goes its own way.
  made.with_designs({units({0, 0, 0}), units({1, 1, 0}), units({0, 0, 1}), units({1, 1, 2})});
  made.add(9 * kHour_s, 12, 0).add(kHour_s, 20, 1).add(kHour_s, 17, 2).add(kHour_s, 30, 3);
  const Regression fit = regress(made.measured(), {"backup", "photos", "streaming"}, {all_idle()});
  CHECK(fit.increments[0].in_step_with == std::vector<std::string>{"photos"});
  CHECK(fit.increments[1].in_step_with == std::vector<std::string>{"backup"});
  CHECK_FALSE(fit.increments[0].each_w);
  CHECK_FALSE(fit.increments[1].each_w);
  CHECK(fit.increments[1].unit_hours == doctest::Approx(2));
  REQUIRE(fit.idle_w);
  CHECK(fit.idle_w->value == doctest::Approx(12));
  REQUIRE(fit.increments[2].each_w);
  CHECK(fit.increments[2].each_w->value == doctest::Approx(5));
}

TEST_CASE("regression: what is always in use cannot be told from idle") {
  MadeMeasured made;
  made.with_designs({units({0, 0}), units({1, 0}), units({1, 1})});
  made.add(9 * kHour_s, 12, 1).add(kHour_s, 20, 2);
  const Regression fit = regress(made.measured(), {"house", "backup"}, {all_idle()});
  CHECK_FALSE(fit.idle_w);
  CHECK(fit.increments[0].in_step_with_idle);
  CHECK(fit.increments[0].in_step_with.empty());
  CHECK_FALSE(fit.increments[0].each_w);
  CHECK(fit.increments[1].each_w->value == doctest::Approx(8));
}

TEST_CASE("regression: one of two workloads is always in use") {
  MadeMeasured made = two_workloads();
  made.add(9 * kHour_s, 12, 1).add(9 * kHour_s, 20, 2);
  const Regression fit = regress(made.measured(), {"day", "night"}, {all_idle()});
  CHECK_FALSE(fit.idle_w);
  CHECK(fit.increments[0].in_step_with == std::vector<std::string>{"night"});
  CHECK(fit.increments[0].in_step_with_idle);
  CHECK(fit.increments[1].in_step_with_idle);
}

TEST_CASE("regression: a workload that was never in use has no watts") {
  MadeMeasured made = two_workloads();
  made.add(9 * kHour_s, 12, 0).add(kHour_s, 20, 1);
  const Regression fit = regress(made.measured(), {"streaming", "backup"}, {all_idle()});
  CHECK(fit.increments[0].each_w->value == doctest::Approx(8));
  CHECK(fit.increments[1].workload == "backup");
  CHECK(fit.increments[1].unit_hours == 0);
  CHECK_FALSE(fit.increments[1].each_w);
  CHECK(fit.increments[1].in_step_with.empty());
}

TEST_CASE("regression: time off and asleep is left out") {
  MadeMeasured made;
  made.with_designs({units({0}), units({1})});
  for (int day = 0; day < 7; ++day) {
    made.add(8 * kHour_s, 0.4, 0).add(2 * kHour_s, 2.5, 0);
    made.add(10 * kHour_s, 25, 0).add(4 * kHour_s, 31, 1);
  }
  const std::vector<Level> levels = levels_of(made.measured());
  REQUIRE(levels.size() == 4);
  const Regression fit = regress(made.measured(), {"streaming"}, levels);
  CHECK(fit.idle_w->value == doctest::Approx(25));
  CHECK(fit.increments[0].each_w->value == doctest::Approx(6));
  CHECK(fit.increments[0].unit_hours == doctest::Approx(28));
}

TEST_CASE("regression: without workloads idle is the mean of all that is awake") {
  MadeMeasured made;
  made.add(6 * kHour_s, 0.2).add(3 * kHour_s, 10).add(kHour_s, 14);
  const Regression fit = regress(made.measured(), {}, levels_of(made.measured()));
  REQUIRE(fit.idle_w);
  CHECK(fit.idle_w->value == doctest::Approx(11));
  CHECK(fit.increments.empty());
}

TEST_CASE("regression: a steady hour that is one reading counts as an hour") {
  // Rows that come only when watts move: one interval, one parcel, in the cell that it begins in.
  MadeMeasured made;
  made.with_designs({units({0}), units({1})}).add(60, 14, 0).add(60, 21, 1);
  Measured measured = made.measured();
  const Parcel steady{2, static_cast<std::uint16_t>(bin_of(10) / kBinsOfClass), 0, {3600, 36000}};
  measured.parcels.push_back(steady);
  const Regression fit = regress(measured, {"streaming"}, {all_idle()});
  CHECK(fit.idle_w->value == doctest::Approx((14 * 60 + 36000) / 3660.0));
}

TEST_CASE("regression: nothing awake, nothing fitted") {
  MadeMeasured made = two_workloads();
  made.add(9 * kHour_s, 0, 0);
  const Regression fit =
      regress(made.measured(), {"streaming", "backup"}, levels_of(made.measured()));
  CHECK_FALSE(fit.idle_w);
  REQUIRE(fit.increments.size() == 2);
  CHECK(fit.increments[1].workload == "backup");
  CHECK_FALSE(fit.increments[1].each_w);
  CHECK(fit.residuals.sd_w == 0);
}

TEST_CASE("regression: watts that fall in use count as none, and say how sure that is") {
  MadeMeasured made;
  made.with_designs({units({0}), units({1})});
  Chance chance(3);
  for (int hour = 0; hour < 100; ++hour) {
    for (int minute = 0; minute < 60; ++minute) {
      made.add(60, (hour % 4 == 3 ? 19.8 : 20) + 0.5 * chance.normal(), hour % 4 == 3 ? 1 : 0);
    }
  }
  const Regression fit = regress(made.measured(), {"backup"}, {all_idle()});
  CHECK(fit.increments[0].each_w->value == 0);
  // Nearly independent minutes: 0.5 W x sqrt(1/4500 + 1/1500).
  CHECK(fit.increments[0].each_w->standard_error > 0.7 * 0.0149);
  CHECK(fit.increments[0].each_w->standard_error < 1.5 * 0.0149);
  CHECK(fit.idle_w->value == doctest::Approx(made.measured().kept.mean_w()));
}

// The sandwich as it stands in the books: with all its sums over cells and lags written out.
TEST_CASE("regression: standard errors are those of a lag by lag reckoning") {
  MadeMeasured made = two_workloads();
  Chance chance(8);
  FadingNoise noise(0.8, 600, 60);
  const int cells = 2000;
  Eigen::MatrixXd x(cells, 3);
  Eigen::VectorXd y(cells);
  Eigen::VectorXd seconds(cells);
  for (int cell = 0; cell < cells; ++cell) {
    const auto design = static_cast<std::size_t>(cell / 50 % 4);
    x.row(cell) << 1, made.measured().designs[design].transpose();
    y(cell) = x.row(cell).dot(Eigen::Vector3d(12, 6, 9)) + noise.next(chance);
    seconds(cell) = cell % 7 == 0 ? 30 : 60;
    made.add(seconds(cell), y(cell), design).skip(60 - seconds(cell));
  }
  const Eigen::MatrixXd gram = x.transpose() * seconds.asDiagonal() * x;
  const Eigen::VectorXd right = gram.inverse() * x.transpose() * seconds.asDiagonal() * y;
  const Eigen::MatrixXd scores =
      (seconds.array() * (y - x * right).array()).matrix().asDiagonal() * x;

  const Regression fit = regress(made.measured(), {"streaming", "backup"}, {all_idle()});
  CHECK(fit.idle_w->value == doctest::Approx(right(0)).epsilon(1e-11));
  CHECK(fit.increments[1].each_w->value == doctest::Approx(right(2)).epsilon(1e-11));
  const Estimate estimates[] = {*fit.idle_w, *fit.increments[0].each_w, *fit.increments[1].each_w};
  double most_steps = 0;
  for (Index j = 0; j < 3; ++j) {
    const Eigen::VectorXd g = gram.inverse().col(j);
    const Eigen::VectorXd weights = (seconds.array() * (x * g).array().square()).matrix();
    const LongRun run = long_run(scores * g, weights, 60);
    double meat = 0;
    double seen = 0;
    for (int lag = 1 - cells; lag < cells; ++lag) {
      const double kernel = 1 - std::abs(lag) / static_cast<double>(run.steps);
      if (kernel <= 0) continue;
      const int n = cells - std::abs(lag);
      meat += kernel * (scores * g).head(n).dot((scores * g).tail(n));
      seen += kernel * weights.head(n).dot(weights.tail(n));
    }
    seen /= weights.sum() * weights.sum();
    const double b = (3 - std::sqrt(9 - 12 * seen)) / 2;
    CHECK(b < 0.2);
    const double wider = (1.96 + 2.9694 * b + 0.416 * b * b - 0.5324 * b * b * b) / 1.96;
    CHECK(estimates[j].standard_error ==
          doctest::Approx(wider * std::sqrt(meat * cells / (cells - 3.0))).epsilon(1e-9));
    most_steps = std::max(most_steps, static_cast<double>(run.steps));
  }
  CHECK(most_steps >= 60);
  CHECK(fit.residuals.bandwidth_s == 60 * most_steps);
}

TEST_CASE("regression: residuals by hand") {
  MadeMeasured made;
  made.with_designs({units({0}), units({1})});
  // Cells off by +1, -1, +1, and after a hole by -1, then 0 and 0 in use.
  made.add(60, 11).add(60, 9).add(60, 11).skip(60).add(60, 9).add(120, 15, 1);
  const Regression fit = regress(made.measured(), {"streaming"}, {all_idle()});
  CHECK(fit.residuals.sd_w == doctest::Approx(std::sqrt(4.0 / 6)));
  CHECK(fit.residuals.largest_w == doctest::Approx(1));
  // Four pairs: +1 and -1, -1 and +1, -1 and 0, 0 and 0. Squares before are 3, after 2.
  CHECK(fit.residuals.lag_one == doctest::Approx(-2 / std::sqrt(3.0 * 2)));
  // Mean 70/6, squares 2 x 121 + 2 x 81 + 2 x 225 - 4900/6.
  CHECK(fit.residuals.explained == doctest::Approx(1 - 4 / (854 - 4900.0 / 6)));
  CHECK(fit.residuals.bandwidth_s == doctest::Approx(7 * 60));  // All there is.
}

// Intervals of a coarse counter are longer where less is drawn, and begin in few cells: neighbours
// are then no fair sample of all.
TEST_CASE("regression: the correlation of neighbours is never above 1") {
  MadeMeasured made;
  made.with_designs({units({0}), units({1})});
  for (int hour = 0; hour < 50; ++hour) {
    made.add(60, 40).add(60, 41).skip(3480);  // Neighbours, far from the mean.
    for (int i = 0; i < 30; ++i) made.add(60, 10).skip(60);
  }
  const Regression fit = regress(made.measured(), {"streaming"}, {all_idle()});
  CHECK(fit.residuals.lag_one > 0.9);
  CHECK(fit.residuals.lag_one <= 1);
}

// A sample of power is that of its moment: of a use that begins amid an interval it knows nothing,
// and it holds one that ends until the next. All intervals count in the coefficients, and the
// standard errors allow for it.
TEST_CASE("regression: what the two ends of a use take away is in the standard error") {
  constexpr int kUses = 40;
  constexpr double kIdle_w = 20;
  constexpr double kFilms_w = 10;
  std::vector<Eigen::VectorXd> designs = {units({0}), units({1})};
  std::vector<bool> changing = {false, false};
  for (int use = 0; use < kUses; ++use) {
    designs.push_back(units({(use + 0.5) / kUses}));
    changing.push_back(true);
  }
  MadeMeasured made;
  made.with_designs(designs);
  Chance chance(4);
  Eigen::Matrix2d gram = Eigen::Matrix2d::Zero();
  Eigen::Vector2d moments = Eigen::Vector2d::Zero();
  const auto minute = [&](double watts, std::size_t design) {
    const double read_w = watts + 0.1 * chance.normal();
    made.add(60, read_w, design);
    const Eigen::Vector2d row(1, designs[design](0));
    gram += row * row.transpose();
    moments += row * read_w;
  };
  for (std::size_t use = 0; use < kUses; ++use) {
    for (int i = 0; i < 50; ++i) minute(kIdle_w, 0);
    minute(kIdle_w, 2 + use);  // It begins.
    for (int i = 0; i < 8; ++i) minute(kIdle_w + kFilms_w, 1);
    minute(kIdle_w + kFilms_w, 2 + (use * 7) % kUses);  // It ends.
  }
  const Eigen::Vector2d by_hand = gram.inverse() * moments;
  Measured all = made.measured();
  const Regression unmarked = regress(all, {"films"}, {all_idle()});
  all.changing = changing;
  const Regression fit = regress(all, {"films"}, {all_idle()});
  const Estimate films = *fit.increments[0].each_w;
  CHECK(fit.idle_w->value == doctest::Approx(by_hand(0)).epsilon(1e-12));
  CHECK(films.value == doctest::Approx(by_hand(1)).epsilon(1e-12));
  // Of 9 unit-minutes a sixth is lost at the two ends; noise cannot explain that.
  CHECK(films.value < kFilms_w - 0.1);
  CHECK(std::abs(films.value - kFilms_w) > 1.96 * unmarked.increments[0].each_w->standard_error);
  // Known to be off by so much: the interval reaches the truth, and 1.645 of the errors beyond.
  const double off_w = kFilms_w - films.value;
  const double noise_w = unmarked.increments[0].each_w->standard_error;
  CHECK(1.96 * films.standard_error == doctest::Approx(off_w + 1.645 * noise_w).epsilon(0.1));
  CHECK(std::abs(fit.idle_w->value - kIdle_w) < 1.96 * fit.idle_w->standard_error);
}

TEST_CASE("regression: neighbours of a log in steps of minutes are its rows") {
  MadeMeasured made;
  made.with_designs({units({0}), units({1})});
  // A row in every third minute: off by +1, +1, -1, -1, and 0 in use.
  for (const double watts : {11.0, 11.0, 9.0, 9.0}) made.add(60, watts).skip(120);
  made.add(60, 15, 1);
  const Regression fit = regress(made.measured(), {"streaming"}, {all_idle()});
  CHECK(fit.residuals.lag_one ==
        doctest::Approx(1.0 / 4 / (4.0 / 5)));  // Four pairs: 1 - 1 + 1 + 0.
}

TEST_CASE("regression: readings to whole watts are in the standard error") {
  MadeMeasured made;
  made.with_designs({units({0}), units({1})}).with_resolution(1);
  for (int day = 0; day < 5; ++day) made.add(20 * kHour_s, 12, 0).add(4 * kHour_s, 18, 1);
  const std::vector<Level> levels = levels_of(made.measured());
  const Regression fit = regress(made.measured(), {"streaming"}, levels);
  // Each may be off by up to half a watt, by itself: 1 / sqrt(12), and sqrt(2) of it.
  CHECK(fit.idle_w->standard_error == doctest::Approx(0.288675134594813));
  CHECK(fit.increments[0].each_w->standard_error == doctest::Approx(0.408248290463863));
}

}  // namespace
}  // namespace wattweek::metering
