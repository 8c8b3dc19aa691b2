#include "wattweek/metering/long_run.hpp"

#include <doctest/doctest.h>

#include "chance.hpp"

namespace wattweek::metering {
namespace {

using Eigen::Index;

// Newey and West (1987), equation 5, lag by lag.
Eigen::MatrixXd lag_by_lag(const Eigen::MatrixXd& scores, Index steps) {
  Eigen::MatrixXd sum = scores.transpose() * scores;
  for (Index lag = 1; lag < std::min(steps, scores.rows()); ++lag) {
    Eigen::MatrixXd lagged = Eigen::MatrixXd::Zero(scores.cols(), scores.cols());
    for (Index t = lag; t < scores.rows(); ++t) {
      lagged += scores.row(t).transpose() * scores.row(t - lag);
    }
    const double weight = 1 - static_cast<double>(lag) / static_cast<double>(steps);
    sum += weight * (lagged + lagged.transpose());
  }
  return sum;
}

Eigen::MatrixXd made(Index rows, Index columns, double memory) {
  Chance chance(5);
  Eigen::MatrixXd scores(rows, columns);
  for (Index column = 0; column < columns; ++column) {
    FadingNoise noise(1 + static_cast<double>(column), memory, 1);
    for (Index t = 0; t < rows; ++t) scores(t, column) = noise.next(chance);
  }
  return scores;
}

TEST_CASE("long run: three scores by hand") {
  const Eigen::MatrixXd scores = Eigen::Vector3d(1, 2, -1);
  CHECK(bartlett_covariance(scores, 1)(0, 0) == 6);                   // 1 + 4 + 1
  CHECK(bartlett_covariance(scores, 2)(0, 0) == doctest::Approx(6));  // 6 + 2 / 2 (2 - 2)
  // 6 + 2 x 2/3 x 0 + 2 x 1/3 x -1
  CHECK(bartlett_covariance(scores, 3)(0, 0) == doctest::Approx(16.0 / 3));
}

TEST_CASE("long run: sums over windows are the sum over lags") {
  const Eigen::MatrixXd scores = made(200, 3, 4);
  for (const Index steps : {1, 2, 7, 60, 300}) {
    const Eigen::MatrixXd right = lag_by_lag(scores, steps);
    CHECK((bartlett_covariance(scores, steps) - right).norm() < 1e-11 * right.norm());
  }
}

TEST_CASE("long run: Andrews' rule by hand") {
  // r = (1 x 1 + 1 x -1 + -1 x -1) / 4 = 1/4: 4/16 / ((9/16) (25/16)) = 64/225, times 4 steps.
  const Eigen::MatrixXd scores = Eigen::Vector4d(1, 1, -1, -1);
  CHECK(andrews_steps(scores) == doctest::Approx(1.1447 * std::cbrt(256.0 / 225)));
  CHECK(andrews_steps(Eigen::MatrixXd::Zero(9, 2)) == 0);
}

TEST_CASE("long run: the kernel spans the least, what neighbours ask for, or a fifth of the time") {
  CHECK(long_run(made(2000, 1, 0.01), 30).steps == 30);
  const Index wanted = long_run(made(2000, 1, 10), 2).steps;
  CHECK(wanted > 60);  // 1.1447 (4 r^2 / (1 - r^2)^2 2000)^(1/3) = 65 for r = exp(-1/10).
  CHECK(wanted < 150);
  CHECK(long_run(made(2000, 1, 1000), 2).steps == 400);
  CHECK(long_run(made(10, 1, 1), 60).steps == 10);
}

TEST_CASE("long run: what a fit takes from the covariance is given back") {
  const Eigen::MatrixXd scores = made(1000, 1, 0.01);
  const LongRun run = long_run(scores, 100);
  REQUIRE(run.steps == 100);
  const double right = bartlett_covariance(scores, 100)(0, 0) / (1 - 0.1 + 0.01 / 3);
  CHECK(run.covariance(0, 0) == doctest::Approx(right));
}

}  // namespace
}  // namespace wattweek::metering
