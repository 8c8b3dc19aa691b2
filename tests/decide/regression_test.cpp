// Least squares over points whose answer is known.

#include "decide/regression.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <random>

using namespace wattweek::decide;

namespace {

using Point = std::vector<double>;

std::vector<Point> random_points(std::size_t count, std::size_t dimensions) {
  std::mt19937_64 engine(4);
  std::vector<Point> points(count, Point(dimensions));
  for (Point& point : points) {
    for (double& x : point) x = static_cast<double>(engine() >> 11U) * 0x1p-53;
  }
  return points;
}

}  // namespace

TEST_CASE("data on a plane give the plane's slopes and are explained in full") {
  const std::vector<double> slopes = {3, -0.5, 0, 120};
  RegressionSums sums(4);
  for (const Point& x : random_points(50, 4)) {
    sums.add(x, 7 + 3 * x[0] - 0.5 * x[1] + 120 * x[3]);
  }
  const RegressionSums::Fit fit = sums.fit();
  for (Eigen::Index i = 0; i < 4; ++i) {
    CHECK(std::fabs(fit.coefficients(i) - slopes[static_cast<std::size_t>(i)]) < 1e-10);
  }
  CHECK(std::fabs(fit.r_squared - 1) < 1e-12);
}

TEST_CASE("what is no plane is explained in part, as worked out by hand") {
  // y = x^2 at 0, 1/4, 1/2, 3/4, 1 (mean of y 3/8): slope sum(dx dy) / sum(dx^2)
  // = (0.5 * 3/8 + 0.25 * 5/16 + 0.25 * 3/16 + 0.5 * 5/8) / 0.625 = 0.625 / 0.625 = 1;
  // explained 1^2 * 0.625 / sum(dy^2), and sum(dy^2) = 0.6796875: 0.919540229885.
  RegressionSums sums(1);
  for (const double x : {0.0, 0.25, 0.5, 0.75, 1.0}) sums.add({x}, x * x);
  const RegressionSums::Fit fit = sums.fit();
  CHECK(std::fabs(fit.coefficients(0) - 1) < 1e-13);
  CHECK(std::fabs(fit.r_squared - 0.625 / 0.6796875) < 1e-13);
}

TEST_CASE("coordinates that go together share what they explain") {
  // x1 and x2 correlate; ordinary least squares of (x1 + 2 x2) finds 1 and 2 all the same.
  RegressionSums sums(2);
  for (const Point& x : random_points(200, 2)) {
    const Point together = {x[0], 0.9 * x[0] + 0.1 * x[1]};
    sums.add(together, together[0] + 2 * together[1]);
  }
  const RegressionSums::Fit fit = sums.fit();
  CHECK(std::fabs(fit.coefficients(0) - 1) < 1e-9);
  CHECK(std::fabs(fit.coefficients(1) - 2) < 1e-9);
}

TEST_CASE("sums gathered in pieces are the sums gathered at once") {
  RegressionSums whole(3);
  RegressionSums first(3);
  RegressionSums second(3);
  int n = 0;
  for (const Point& x : random_points(80, 3)) {
    const double y = x[0] * x[1] - std::exp(x[2]);
    whole.add(x, y);
    (++n <= 30 ? first : second).add(x, y);
  }
  first.add(second);
  CHECK((whole.fit().coefficients - first.fit().coefficients).cwiseAbs().maxCoeff() < 1e-12);
  CHECK(std::fabs(whole.fit().r_squared - first.fit().r_squared) < 1e-12);
}

TEST_CASE("with fewer points than slopes each is found by itself, and stays finite") {
  RegressionSums sums(100);
  for (const Point& x : random_points(60, 100)) sums.add(x, 5 * x[0]);
  const RegressionSums::Fit fit = sums.fit();
  CHECK(std::fabs(fit.coefficients(0) - 5) < 1e-10);
  CHECK(fit.coefficients.array().isFinite().all());
  CHECK(fit.r_squared >= 0);
  CHECK(fit.r_squared <= 1);
}

TEST_CASE("what never changes has no slopes and nothing to explain") {
  for (const double y : {0.0, 2.5}) {
    RegressionSums sums(2);
    for (const Point& x : random_points(40, 2)) sums.add(x, y);
    const RegressionSums::Fit fit = sums.fit();
    CHECK(fit.r_squared == 0);
    CHECK(fit.coefficients.cwiseAbs().maxCoeff() == 0);
  }
}

TEST_CASE("no points and no coordinates explain nothing") {
  CHECK(RegressionSums(2).fit().r_squared == 0);
  CHECK(RegressionSums(2).fit().coefficients.cwiseAbs().maxCoeff() == 0);
  RegressionSums none(0);
  none.add(Point{}, 1);
  none.add(Point{}, 2);
  CHECK(none.fit().r_squared == 0);
  CHECK(none.fit().coefficients.size() == 0);
}
