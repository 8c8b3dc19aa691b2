#include "wattweek/metering/regression.hpp"

#include <algorithm>
#include <cmath>

#include "awake_cells.hpp"
#include "error_beside.hpp"
#include "wattweek/metering/least_squares.hpp"
#include "wattweek/metering/levels.hpp"

namespace wattweek::metering {

namespace {

using Eigen::Index;

// Where the kernel sees more than this of a coefficient's weight at once, there are hardly five
// stretches that could tell how much they differ.
constexpr double kFewStretches = 0.2;

// Columns of the design: idle is the first, then the workloads.
constexpr Index kIdle = 0;

// The awake time by combination of units in use. Rows are scaled by the root of their time.
struct Weighted {
  Eigen::MatrixXd columns;
  Eigen::VectorXd heights;
  Eigen::VectorXd seconds;
};

Weighted weighted(const std::vector<DrawnInUse>& rows, const std::vector<Index>& used) {
  const auto n = static_cast<Index>(rows.size());
  const auto p = static_cast<Index>(used.size());
  // At least as many rows as columns: rows of zeros change nothing.
  Weighted all{Eigen::MatrixXd::Zero(std::max(n, p), p), Eigen::VectorXd::Zero(std::max(n, p)),
               Eigen::VectorXd::Zero(std::max(n, p))};
  for (Index i = 0; i < n; ++i) {
    const DrawnInUse& row = rows[static_cast<std::size_t>(i)];
    const double root = std::sqrt(row.drawn.seconds);
    all.columns.row(i) = root * row.columns(used).transpose();
    all.heights(i) = root * row.drawn.mean_w();
    all.seconds(i) = row.drawn.seconds;
  }
  return all;
}

class Fit {
 public:
  Fit(const AwakeCells& cells, std::size_t workloads, double rounding_w)
      : cells_(cells),
        rows_(cells.by_design()),
        rounding_w_(rounding_w),
        hours_(cells.unit_hours()),
        x_(Eigen::VectorXd::Zero(static_cast<Index>(workloads) + 1)) {
    for (Index j = 0; j < x_.size(); ++j) {
      if (hours_(j) > 0) used_.push_back(j);
    }
    std::copy_if(rows_.begin(), rows_.end(), std::back_inserter(steady_rows_),
                 [](const DrawnInUse& row) { return !row.changing; });
    const Weighted all = weighted(rows_, used_);
    x_(used_) = non_negative_least_squares(all.columns, all.heights);
    for (const auto& set : ScaledQr(all.columns).dependent_sets()) {
      dependent_.emplace_back();
      for (const Index column : set) dependent_.back().push_back(used_[at(column)]);
    }
    for (const Index j : used_) {
      if (x_(j) > 0) free_.push_back(j);
    }
    fitted_ = cells_.fitted(x_);
  }

  double unit_hours(Index j) const { return hours_(j); }

  // The columns that the log cannot tell from this one.
  std::vector<Index> in_step_with(Index j) const {
    for (const auto& set : dependent_) {
      if (std::find(set.begin(), set.end(), j) == set.end()) continue;
      std::vector<Index> others;
      std::remove_copy(set.begin(), set.end(), std::back_inserter(others), j);
      return others;
    }
    return {};
  }

  std::optional<Estimate> estimate(Index j) {
    if (!(hours_(j) > 0) || !in_step_with(j).empty()) return std::nullopt;
    if (x_(j) > 0) return Estimate{x_(j), standard_error(free_, j, fitted_)};
    std::vector<Index> beside = free_;
    beside.push_back(j);
    return Estimate{0, standard_error(beside, j, fitted_freely(beside))};
  }

  Residuals residuals() const {
    Residuals all = cells_.residuals(fitted_);
    all.bandwidth_s = bandwidth_s_;
    return all;
  }

 private:
  static std::size_t at(Index i) { return static_cast<std::size_t>(i); }

  // Watts by these columns alone, whatever the signs of their coefficients.
  Eigen::VectorXd fitted_freely(const std::vector<Index>& columns) const {
    const Weighted all = weighted(rows_, columns);
    Eigen::VectorXd x = Eigen::VectorXd::Zero(x_.size());
    x(columns) = ScaledQr(all.columns).solve(all.heights);
    return cells_.fitted(x);
  }

  // What intervals in which use begins or ends do to a coefficient: what it would be without them,
  // less what it is. 0 where the log cannot tell.
  double moved_by_changes(const Weighted& all, const std::vector<Index>& columns,
                          Index at_j) const {
    if (steady_rows_.size() == rows_.size()) return 0;
    const Weighted steady = weighted(steady_rows_, columns);
    if ((steady.columns.colwise().squaredNorm().array() <= 0).any()) return 0;
    const ScaledQr qr(steady.columns);
    if (!qr.is_full_rank()) return 0;
    return qr.solve(steady.heights)(at_j) - ScaledQr(all.columns).solve(all.heights)(at_j);
  }

  // Of a coefficient fitted beside those of `columns`, the others taken as known.
  double standard_error(const std::vector<Index>& columns, Index j, const Eigen::VectorXd& fitted) {
    const Weighted all = weighted(rows_, columns);
    const Eigen::MatrixXd inverse = ScaledQr(all.columns).inverse_gram();
    const auto at_j = std::find(columns.begin(), columns.end(), j) - columns.begin();
    // The coefficient is the sum over time of this . columns x watts x seconds.
    Eigen::VectorXd direction = Eigen::VectorXd::Zero(x_.size());
    direction(columns) = inverse.col(at_j);
    const Eigen::VectorXd weights = cells_.weights(direction);
    const Index hour = cells_.cells_of(kLeastKernel_s);
    const LongRun run = long_run(cells_.scores(fitted, direction), weights, hour);
    double noise = run.variance;
    if (run.part > kFewStretches) noise = std::max(noise, inverse(at_j, at_j) * pooled(fitted));
    noise *= cells_.small_sample(static_cast<Index>(columns.size()));
    bandwidth_s_ = std::max(bandwidth_s_, static_cast<double>(run.steps) * cells_.cell_seconds());
    const double error_w = std::sqrt(noise + rounding_variance(all, inverse.col(at_j)));
    return error_beside(moved_by_changes(all, columns, at_j), error_w);
  }

  // Long-run variance of all that the fit leaves, for each second.
  double pooled(const Eigen::VectorXd& fitted) const {
    const Eigen::VectorXd idle = Eigen::VectorXd::Unit(x_.size(), kIdle);
    const Eigen::VectorXd seconds = cells_.weights(idle);
    const Index hour = cells_.cells_of(kLeastKernel_s);
    return long_run(cells_.scores(fitted, idle), seconds, hour).variance / seconds.sum();
  }

  // Each combination of units errs by rounding as one.
  double rounding_variance(const Weighted& all, const Eigen::VectorXd& direction) const {
    const Eigen::VectorXd parts = (all.columns * direction).cwiseProduct(all.seconds.cwiseSqrt());
    return rounding_w_ * rounding_w_ * parts.squaredNorm();
  }

  const AwakeCells& cells_;
  std::vector<DrawnInUse> rows_;
  std::vector<DrawnInUse> steady_rows_;  // Without intervals in which use begins or ends.
  double rounding_w_;
  Eigen::VectorXd hours_;
  Eigen::VectorXd x_;
  std::vector<Index> used_;                    // Columns that are ever in use.
  std::vector<std::vector<Index>> dependent_;  // Sets of columns that go in step.
  std::vector<Index> free_;                    // Columns that the rule does not hold at 0.
  Eigen::VectorXd fitted_;
  double bandwidth_s_ = 0;
};

IncrementEstimate increment(Fit& fit, const std::vector<std::string>& workloads,
                            std::size_t workload) {
  const Index column = static_cast<Index>(workload) + 1;
  IncrementEstimate increment;
  increment.workload = workloads[workload];
  increment.unit_hours = fit.unit_hours(column);
  increment.each_w = fit.estimate(column);
  for (const Index other : fit.in_step_with(column)) {
    if (other == kIdle) {
      increment.in_step_with_idle = true;
    } else {
      increment.in_step_with.push_back(workloads[static_cast<std::size_t>(other - 1)]);
    }
  }
  return increment;
}

Regression nothing_awake(const std::vector<std::string>& workloads) {
  Regression regression;
  for (const std::string& workload : workloads) {
    regression.increments.emplace_back();
    regression.increments.back().workload = workload;
  }
  return regression;
}

double rounding_of_idle_w(const Measured& measured, const std::vector<Level>& levels) {
  for (const Level& level : levels) {
    if (level.state == State::idle) return rounding_error_of_unused_w(measured, level);
  }
  return 0;
}

}  // namespace

Regression regress(const Measured& measured, const std::vector<std::string>& workloads,
                   const std::vector<Level>& levels) {
  const AwakeCells cells(measured, levels);
  if (cells.empty()) return nothing_awake(workloads);
  Fit fit(cells, workloads.size(), rounding_of_idle_w(measured, levels));
  Regression regression;
  regression.idle_w = fit.estimate(kIdle);
  for (std::size_t workload = 0; workload < workloads.size(); ++workload) {
    regression.increments.push_back(increment(fit, workloads, workload));
  }
  regression.residuals = fit.residuals();
  return regression;
}

}  // namespace wattweek::metering
