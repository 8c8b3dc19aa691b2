#pragma once
// Straight-line laws through readings: the coefficients that leave the least sum of squares, with
// or without the rule that none may be negative.

#include <Eigen/Core>
#include <Eigen/QR>
#include <vector>

namespace wattweek::metering {

/// A column counts as made of others when this part of its length or less sticks out of their span
/// (the sine of the angle between). Common practice, no source: double precision leaves 1e-16,
/// two habits that somebody noted are hardly ever within a thousandth of each other.
inline constexpr double kInStep = 1e-7;

/// QR of a matrix whose columns were scaled to length 1 first, so that its rank does not hang on
/// the units of its columns. Householder's with column pivoting: P. Businger and G. H. Golub,
/// Numerische Mathematik 7 (1965), 269-276.
class ScaledQr {
 public:
  /// \pre at least as many rows as columns, at least one column, no column of zeros, all finite
  explicit ScaledQr(const Eigen::MatrixXd& columns, double in_step = kInStep);

  bool is_full_rank() const { return qr_.rank() == qr_.cols(); }

  /// Coefficients x with the least |columns x - heights|. \pre is_full_rank()
  Eigen::VectorXd solve(const Eigen::VectorXd& heights) const;

  /// (columns' columns)^-1: of coefficients, the covariance for each unit of variance of the
  /// heights. \pre is_full_rank()
  Eigen::MatrixXd inverse_gram() const;

  /// Sets of columns of which each is made of the others of its set; empty at full rank. Indices
  /// ascend within a set and, of the first ones, from set to set.
  std::vector<std::vector<Eigen::Index>> dependent_sets() const;

 private:
  Eigen::VectorXd lengths_;
  Eigen::ColPivHouseholderQR<Eigen::MatrixXd> qr_;
};

/// Coefficients x >= 0 with the least |columns x - heights|: C. L. Lawson and R. J. Hanson, Solving
/// Least Squares Problems (1974), chapter 23, algorithm NNLS. What the columns add up to is unique;
/// where they depend on each other the coefficients are not. Zero columns get 0.
/// \pre at least as many rows as columns, all finite
Eigen::VectorXd non_negative_least_squares(const Eigen::MatrixXd& columns,
                                           const Eigen::VectorXd& heights);

}  // namespace wattweek::metering
