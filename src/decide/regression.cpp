#include "regression.hpp"

#include <Eigen/Cholesky>
#include <algorithm>
#include <cmath>

namespace wattweek::decide {

namespace {

constexpr double kCentre = 0.5;

Eigen::Index size_of(std::size_t dimensions) { return static_cast<Eigen::Index>(dimensions); }

}  // namespace

RegressionSums::RegressionSums(std::size_t dimensions)
    : sum_x_(Eigen::VectorXd::Zero(size_of(dimensions))),
      sum_xy_(Eigen::VectorXd::Zero(size_of(dimensions))),
      sum_xx_(Eigen::MatrixXd::Zero(size_of(dimensions), size_of(dimensions))) {}

void RegressionSums::add(const std::vector<double>& point, double y) {
  const Eigen::Index k = sum_x_.size();
  count_ += 1;
  sum_y_ += y;
  sum_yy_ += y * y;
  for (Eigen::Index i = 0; i < k; ++i) {
    const double x = point[static_cast<std::size_t>(i)] - kCentre;
    sum_x_(i) += x;
    sum_xy_(i) += x * y;
    for (Eigen::Index j = i; j < k; ++j) {
      sum_xx_(j, i) += x * (point[static_cast<std::size_t>(j)] - kCentre);
    }
  }
}

void RegressionSums::add(const RegressionSums& other) {
  count_ += other.count_;
  sum_y_ += other.sum_y_;
  sum_yy_ += other.sum_yy_;
  sum_x_ += other.sum_x_;
  sum_xy_ += other.sum_xy_;
  sum_xx_ += other.sum_xx_;
}

RegressionSums::Fit RegressionSums::fit() const {
  const Eigen::Index k = sum_x_.size();
  Fit fit{Eigen::VectorXd::Zero(k), 0, 0};
  if (count_ == 0) return fit;
  const Eigen::MatrixXd whole = sum_xx_.selfadjointView<Eigen::Lower>();
  const Eigen::MatrixXd xx = whole - sum_x_ * sum_x_.transpose() / count_;
  const Eigen::VectorXd xy = sum_xy_ - sum_x_ * (sum_y_ / count_);
  const double yy = sum_yy_ - sum_y_ * sum_y_ / count_;
  if (k == 0 || yy <= 0) return fit;
  fit.deviation = std::sqrt(yy / count_);
  if (count_ > 2 * static_cast<double>(k)) {
    fit.coefficients = xx.ldlt().solve(xy);
  } else {
    fit.coefficients = xy.cwiseQuotient(xx.diagonal());
  }
  const double unexplained =
      yy - 2 * fit.coefficients.dot(xy) + fit.coefficients.dot(xx * fit.coefficients);
  fit.r_squared = std::clamp(1 - unexplained / yy, 0.0, 1.0);
  return fit;
}

}  // namespace wattweek::decide
