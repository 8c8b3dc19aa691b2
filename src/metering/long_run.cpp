#include "wattweek/metering/long_run.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>

namespace wattweek::metering {

namespace {

using Eigen::Index;

// Neighbours more alike than this would ask for more than the log has.
constexpr double kMostAlike = 0.9999;

// Below so many steps, their correlation says nothing.
constexpr Index kFewSteps = 50;

Eigen::MatrixXd taken_together(const Eigen::MatrixXd& scores, Index steps) {
  Eigen::MatrixXd sums = Eigen::MatrixXd::Zero((scores.rows() + steps - 1) / steps, scores.cols());
  for (Index t = 0; t < scores.rows(); ++t) sums.row(t / steps) += scores.row(t);
  return sums;
}

double andrews_steps_of(const Eigen::VectorXd& scores) {
  const Index n = scores.size();
  const double squares = scores.squaredNorm();
  if (n < 2 || !(squares > 0)) return 0;
  const double r =
      std::clamp(scores.head(n - 1).dot(scores.tail(n - 1)) / squares, -kMostAlike, kMostAlike);
  const double alpha = 4 * r * r / ((1 - r) * (1 - r) * (1 + r) * (1 + r));
  return 1.1447 * std::cbrt(alpha * static_cast<double>(n));
}

double wanted_steps(const Eigen::MatrixXd& scores) {
  double wanted = std::max(1.0, andrews_steps(scores));
  for (const Index together : {4, 16}) {
    const Eigen::MatrixXd sums = taken_together(scores, together);
    if (sums.rows() < kFewSteps) break;
    wanted = std::max(wanted, static_cast<double>(together) * andrews_steps(sums));
  }
  return wanted;
}

}  // namespace

// The weights of Bartlett's kernel are those with which two moments meet in windows of so many
// steps. So the sum over lags is one over windows: linear in time, and never negative.
Eigen::MatrixXd bartlett_covariance(const Eigen::MatrixXd& scores, Index steps) {
  assert(steps >= 1);
  Eigen::MatrixXd sum = Eigen::MatrixXd::Zero(scores.cols(), scores.cols());
  Eigen::RowVectorXd window = Eigen::RowVectorXd::Zero(scores.cols());
  for (Index end = 0; end < scores.rows() + steps - 1; ++end) {
    if (end < scores.rows()) window += scores.row(end);
    if (end >= steps) window -= scores.row(end - steps);
    sum += window.transpose() * window;
  }
  return sum / static_cast<double>(steps);
}

double andrews_steps(const Eigen::MatrixXd& scores) {
  double most = 0;
  for (Index column = 0; column < scores.cols(); ++column) {
    most = std::max(most, andrews_steps_of(scores.col(column)));
  }
  return most;
}

LongRun long_run(const Eigen::MatrixXd& scores, Index least_steps) {
  assert(least_steps >= 1);
  const Index span = std::max<Index>(scores.rows(), 1);
  const auto wanted = static_cast<Index>(std::ceil(std::min(wanted_steps(scores), 1e9)));
  const Index most = std::max(least_steps, span / 5);
  const Index steps = std::clamp(wanted, std::min(least_steps, span), std::min(most, span));
  const double b = static_cast<double>(steps) / static_cast<double>(span);
  return {bartlett_covariance(scores, steps) / (1 - b + b * b / 3), steps};
}

}  // namespace wattweek::metering
