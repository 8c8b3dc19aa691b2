#pragma once
// Least squares over many draws, gathered piece by piece.

#include <Eigen/Core>
#include <vector>

namespace wattweek::decide {

/// Sums that a linear regression of y on the coordinates of points needs, about fixed centres.
class RegressionSums {
 public:
  explicit RegressionSums(std::size_t dimensions = 0);

  /// A point with coordinates in the unit interval, and y about its centre.
  void add(const std::vector<double>& point, double y);
  void add(const RegressionSums& other);

  struct Fit {
    Eigen::VectorXd coefficients;
    double r_squared = 0;  ///< 0 where y never changes.
    double deviation = 0;  ///< Of y: the root of its mean squared distance from its mean.
  };
  /// The coefficients with an intercept. Where there are too few points for all of them, each by
  /// itself: the coordinates are independent.
  Fit fit() const;

 private:
  double count_ = 0;
  double sum_y_ = 0;
  double sum_yy_ = 0;
  Eigen::VectorXd sum_x_;
  Eigen::VectorXd sum_xy_;
  Eigen::MatrixXd sum_xx_;  // Lower half.
};

}  // namespace wattweek::decide
