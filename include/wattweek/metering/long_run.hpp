#pragma once
// How far a sum over time may be off when neighbouring minutes err together: its long-run
// variance.

#include <Eigen/Core>

namespace wattweek::metering {

/// Of a series in time (equal steps; 0 where there is a hole) the variance of its sum.
/// Heteroskedasticity and autocorrelation consistent: W. K. Newey and K. D. West, Econometrica 55
/// (1987), 703-708: with Bartlett's kernel over `steps`, the sum over lags |l| < steps of
/// (1 - |l| / steps) x sum over t of series(t) series(t + l). \pre 1 <= steps
double bartlett_variance(const Eigen::VectorXd& series, Eigen::Index steps);

/// The steps of Bartlett's kernel that D. W. K. Andrews, Econometrica 59 (1991), 817-858, equations
/// 6.2 and 6.4, finds best where the series is an autoregression of the first order:
/// 1.1447 (4 r^2 T / ((1 - r)^2 (1 + r)^2))^(1/3), r the correlation of neighbours, T the number of
/// steps in time. Not rounded.
double andrews_steps(const Eigen::VectorXd& series);

struct LongRun {
  double variance = 0;     ///< Of the sum. For normal quantiles: see `long_run`.
  Eigen::Index steps = 1;  ///< What Bartlett's kernel spans.
  double part = 0;         ///< b below.
};

/// The variance of the error of a coefficient, which is the sum of `series`: what each step adds to
/// it. `weights` says how much each step counts for the coefficient (its part in the squares that
/// the coefficient was fitted to; for a mean the time).
///
/// Bartlett's kernel spans `least_steps` or more. More where Andrews' rule says so, for the steps
/// as they are, or for four or sixteen of them taken together (readings to whole watts hide from
/// neighbours that a slow swing is there); up to a fifth of the time.
///
/// The sum is too small, since a fit makes the series sum to 0, and it is itself uncertain. Both
/// grow with the part b of all weight that the kernel sees at once. So it is multiplied by
/// (1 + 1.5150 b + 0.2122 b^2 - 0.2716 b^3)^2: N. M. Kiefer and T. J. Vogelsang, Econometric Theory
/// 21 (2005), 1130-1164, table 1, Bartlett's kernel, 97.5 %, over 1.96 (from memory; simulated anew
/// in the tests). So 1.96 standard errors hold 95 %, as if they were known. For a mean over time
/// without holes b is the part of the time that the kernel spans. In general it is the b of such a
/// mean that has the same sum over windows of the squares of their weights / (steps x the square of
/// all weight), which is b - b^2 / 3.
/// \pre 1 <= least_steps, as many weights as steps, none negative
LongRun long_run(const Eigen::VectorXd& series, const Eigen::VectorXd& weights,
                 Eigen::Index least_steps);

}  // namespace wattweek::metering
