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

Eigen::VectorXd taken_together(const Eigen::VectorXd& series, Index steps) {
  Eigen::VectorXd sums = Eigen::VectorXd::Zero((series.size() + steps - 1) / steps);
  for (Index t = 0; t < series.size(); ++t) sums(t / steps) += series(t);
  return sums;
}

double wanted_steps(const Eigen::VectorXd& series) {
  double wanted = std::max(1.0, andrews_steps(series));
  for (const Index together : {4, 16}) {
    const Eigen::VectorXd sums = taken_together(series, together);
    if (sums.size() < kFewSteps) break;
    wanted = std::max(wanted, static_cast<double>(together) * andrews_steps(sums));
  }
  return wanted;
}

// How much of all weight the kernel sees at once. Of even weights its windows see b - b^2 / 3,
// since those at the ends are not full; that is solved for b.
double part_seen(const Eigen::VectorXd& weights, Index steps) {
  const double all = weights.sum();
  if (!(all > 0)) return 1;
  const double seen = bartlett_variance(weights, steps) / (all * all);
  return std::min(1.0, 1.5 - std::sqrt(std::max(0.25, 2.25 - 3 * seen)));
}

double for_normal_quantiles(double b) {
  const double wider = (1.9600 + 2.9694 * b + 0.4160 * b * b - 0.5324 * b * b * b) / 1.9600;
  return wider * wider;
}

}  // namespace

// The weights of Bartlett's kernel are those with which two moments meet in windows of so many
// steps. So the sum over lags is one over windows: linear in time, and never negative.
double bartlett_variance(const Eigen::VectorXd& series, Index steps) {
  assert(steps >= 1);
  double sum = 0;
  double window = 0;
  for (Index end = 0; end < series.size() + steps - 1; ++end) {
    if (end < series.size()) window += series(end);
    if (end >= steps) window -= series(end - steps);
    sum += window * window;
  }
  return sum / static_cast<double>(steps);
}

double andrews_steps(const Eigen::VectorXd& series) {
  const Index n = series.size();
  const double squares = series.squaredNorm();
  if (n < 2 || !(squares > 0)) return 0;
  const double r =
      std::clamp(series.head(n - 1).dot(series.tail(n - 1)) / squares, -kMostAlike, kMostAlike);
  const double alpha = 4 * r * r / ((1 - r) * (1 - r) * (1 + r) * (1 + r));
  return 1.1447 * std::cbrt(alpha * static_cast<double>(n));
}

LongRun long_run(const Eigen::VectorXd& series, const Eigen::VectorXd& weights, Index least_steps) {
  assert(least_steps >= 1 && series.size() == weights.size());
  const Index span = std::max<Index>(series.size(), 1);
  const auto wanted = static_cast<Index>(std::ceil(std::min(wanted_steps(series), 1e9)));
  const Index most = std::max(least_steps, span / 5);
  LongRun run;
  run.steps = std::clamp(wanted, std::min(least_steps, span), std::min(most, span));
  run.part = part_seen(weights, run.steps);
  run.variance = bartlett_variance(series, run.steps) * for_normal_quantiles(run.part);
  return run;
}

}  // namespace wattweek::metering
