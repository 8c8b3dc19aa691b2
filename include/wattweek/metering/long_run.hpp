#pragma once
// How far a sum over time may be off when neighbouring minutes err together: the long-run
// covariance of scores.

#include <Eigen/Core>

namespace wattweek::metering {

/// Of scores in time (rows: equal steps of time, 0 where there is a hole; columns: coefficients),
/// the covariance of their sum. Heteroskedasticity and autocorrelation consistent: W. K. Newey and
/// K. D. West, Econometrica 55 (1987), 703-708: with Bartlett's kernel over `steps`,
/// sum over lags |l| < steps of (1 - |l| / steps) sum over t of scores(t)' scores(t + l).
/// \pre 1 <= steps
Eigen::MatrixXd bartlett_covariance(const Eigen::MatrixXd& scores, Eigen::Index steps);

/// The steps of Bartlett's kernel that D. W. K. Andrews, Econometrica 59 (1991), 817-858, equations
/// 6.2 and 6.4, finds best where scores follow an autoregression of the first order:
/// 1.1447 (4 r^2 T / ((1 - r)^2 (1 + r)^2))^(1/3), r the correlation of neighbours, T the number of
/// steps in time. The largest of all columns; not rounded.
double andrews_steps(const Eigen::MatrixXd& scores);

struct LongRun {
  Eigen::MatrixXd covariance;  ///< Of the sum of scores.
  Eigen::Index steps = 1;      ///< What Bartlett's kernel spans.
};

/// The covariance of the sum of scores of a fit: Bartlett's kernel over `least_steps` or more. More
/// where Andrews' rule says so, for the steps as they are, or for four or sixteen of them taken
/// together (readings to whole watts hide from their neighbours that a slow swing is there); up to
/// a fifth of the time.
///
/// Scores of a fit sum to 0, which makes the sum above too small by 1 - b + b^2 / 3 on average,
/// where b is the part of the time that the kernel spans (the mean of the limit in N. M. Kiefer and
/// T. J. Vogelsang, Econometric Theory 21 (2005), 1130-1164, for Bartlett's kernel); it is divided
/// by that. \pre 1 <= least_steps
LongRun long_run(const Eigen::MatrixXd& scores, Eigen::Index least_steps);

}  // namespace wattweek::metering
