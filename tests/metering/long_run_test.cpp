#include "wattweek/metering/long_run.hpp"

#include <doctest/doctest.h>

#include "chance.hpp"

namespace wattweek::metering {
namespace {

using Eigen::Index;

// Newey and West (1987), equation 5, lag by lag.
double lag_by_lag(const Eigen::VectorXd& series, Index steps) {
  double sum = series.squaredNorm();
  for (Index lag = 1; lag < std::min(steps, series.size()); ++lag) {
    double lagged = 0;
    for (Index t = lag; t < series.size(); ++t) lagged += series(t) * series(t - lag);
    sum += 2 * (1 - static_cast<double>(lag) / static_cast<double>(steps)) * lagged;
  }
  return sum;
}

Eigen::VectorXd made(Index size, double memory) {
  Chance chance(5);
  FadingNoise noise(1, memory, 1);
  Eigen::VectorXd series(size);
  for (Index t = 0; t < size; ++t) series(t) = noise.next(chance);
  return series;
}

LongRun long_run_of(const Eigen::VectorXd& series, Index least_steps) {
  return long_run(series, Eigen::VectorXd::Ones(series.size()), least_steps);
}

TEST_CASE("long run: three values by hand") {
  const Eigen::VectorXd series = Eigen::Vector3d(1, 2, -1);
  CHECK(bartlett_variance(series, 1) == 6);                   // 1 + 4 + 1
  CHECK(bartlett_variance(series, 2) == doctest::Approx(6));  // 6 + 2 / 2 (2 - 2)
  // 6 + 2 x 2/3 x 0 + 2 x 1/3 x -1
  CHECK(bartlett_variance(series, 3) == doctest::Approx(16.0 / 3));
}

TEST_CASE("long run: sums over windows are the sum over lags") {
  const Eigen::VectorXd series = made(200, 4);
  for (const Index steps : {1, 2, 7, 60, 300}) {
    CHECK(bartlett_variance(series, steps) == doctest::Approx(lag_by_lag(series, steps)));
  }
}

TEST_CASE("long run: Andrews' rule by hand") {
  // r = (1 x 1 + 1 x -1 + -1 x -1) / 4 = 1/4: 4/16 / ((9/16) (25/16)) = 64/225, times 4 steps.
  const Eigen::VectorXd series = Eigen::Vector4d(1, 1, -1, -1);
  CHECK(andrews_steps(series) == doctest::Approx(1.1447 * std::cbrt(256.0 / 225)));
  CHECK(andrews_steps(Eigen::VectorXd::Zero(9)) == 0);
}

TEST_CASE("long run: the kernel spans the least, what neighbours ask for, or a fifth of the time") {
  CHECK(long_run_of(made(2000, 0.01), 30).steps == 30);
  const Index wanted = long_run_of(made(2000, 10), 2).steps;
  CHECK(wanted > 60);  // 1.1447 (4 r^2 / (1 - r^2)^2 2000)^(1/3) = 65 for r = exp(-1/10).
  CHECK(wanted < 150);
  CHECK(long_run_of(made(2000, 1000), 2).steps == 400);
  CHECK(long_run_of(made(10, 1), 60).steps == 10);
}

TEST_CASE("long run: the part that the kernel sees, in full time and in rare use") {
  const Eigen::VectorXd series = made(1000, 0.01);
  CHECK(long_run_of(series, 100).part == doctest::Approx(0.1).epsilon(1e-3));
  // In use at four moments, far apart: the kernel sees one of them at a time. b - b^2 / 3 = 1/4.
  Eigen::VectorXd rare = Eigen::VectorXd::Zero(1000);
  for (const Index at : {100, 300, 500, 700}) rare(at) = 7;
  CHECK(long_run(series, rare, 100).part == doctest::Approx((3 - std::sqrt(6.0)) / 2));
}

// Kiefer and Vogelsang's law, simulated: means of independent numbers over the root of the variance
// must lie within 1.96 in 95 % of all runs, however wide the kernel.
TEST_CASE("long run: 1.96 standard errors hold 95 % for kernels of all widths") {
  const Index size = 100;
  const int runs = 2000;
  for (const Index steps : {5, 20, 50}) {
    Chance chance(static_cast<std::uint64_t>(steps));
    int inside = 0;
    for (int run = 0; run < runs; ++run) {
      Eigen::VectorXd series(size);
      for (Index t = 0; t < size; ++t) series(t) = chance.normal();
      const double mean = series.mean();
      const double variance = long_run_of(series.array() - mean, steps).variance;
      if (std::abs(mean) * size <= 1.96 * std::sqrt(variance)) ++inside;
    }
    // Three standard deviations of chance: 0.0146.
    CHECK(inside > (0.95 - 0.0146) * runs);
    CHECK(inside < (0.95 + 0.0146) * runs);
  }
}

}  // namespace
}  // namespace wattweek::metering
