// Lawson and Hanson's algorithm NNLS (1974, chapter 23): columns are let in one at a time, that
// with the steepest descent first, and thrown out again where they would turn negative.

#include <algorithm>
#include <limits>
#include <numeric>

#include "wattweek/metering/least_squares.hpp"

namespace wattweek::metering {

namespace {

using Eigen::Index;

// A descent below this part of the length of the heights is what rounding leaves.
constexpr double kFlat = 1e-13;

class NonNegative {
 public:
  NonNegative(const Eigen::MatrixXd& columns, const Eigen::VectorXd& heights)
      : columns_(columns),
        heights_(heights),
        lengths_(columns.colwise().norm()),
        x_(Eigen::VectorXd::Zero(columns.cols())) {}

  Eigen::VectorXd solve() {
    // Each column let in lowers the sum of squares, so that no choice of columns comes twice, but
    // for rounding. Three times as many as there are columns is what Lawson and Hanson allow.
    for (Index step = 0; step < 3 * columns_.cols() && let_in_the_steepest(); ++step) {
      while (!settle()) {
      }
    }
    return x_;
  }

 private:
  // The coefficients that the columns let in would have without the rule.
  Eigen::VectorXd free_coefficients() const {
    return ScaledQr(columns_(Eigen::all, in_)).solve(heights_);
  }

  bool is_in(Index column) const { return std::find(in_.begin(), in_.end(), column) != in_.end(); }

  // Steepest first. Columns have other units, so each descent is that along a step of length 1.
  std::vector<Index> descending() const {
    const Eigen::VectorXd descent = columns_.transpose() * (heights_ - columns_ * x_);
    const double flat = kFlat * heights_.norm();
    std::vector<Index> all;
    for (Index j = 0; j < columns_.cols(); ++j) {
      if (!is_in(j) && descent(j) > flat * lengths_(j)) all.push_back(j);
    }
    std::stable_sort(all.begin(), all.end(), [&](Index a, Index b) {
      return descent(a) / lengths_(a) > descent(b) / lengths_(b);
    });
    return all;
  }

  // A column that is made of those within, or that would not become positive (which is rounding),
  // stays out.
  bool let_in_the_steepest() {
    for (const Index column : descending()) {
      in_.push_back(column);
      const ScaledQr qr(columns_(Eigen::all, in_));
      if (qr.is_full_rank() && qr.solve(heights_).tail(1)(0) > 0) return true;
      in_.pop_back();
    }
    return false;
  }

  // Goes towards the free coefficients as far as none turns negative, and throws out those that
  // reached 0. Was the whole way free?
  bool settle() {
    if (in_.empty()) return true;
    const Eigen::VectorXd aim = free_coefficients();
    const Eigen::VectorXd now = x_(in_);
    double step = 1;
    Index first_at_0 = -1;
    for (Index i = 0; i < aim.size(); ++i) {
      if (aim(i) > 0) continue;
      const double to_0 = now(i) / (now(i) - aim(i));
      if (first_at_0 < 0 || to_0 < step) {
        step = to_0;
        first_at_0 = i;
      }
    }
    x_(in_) = first_at_0 < 0 ? aim : Eigen::VectorXd(now + step * (aim - now));
    if (first_at_0 < 0) return true;
    x_(in_[static_cast<std::size_t>(first_at_0)]) = 0;
    throw_out_zeros();
    return false;
  }

  void throw_out_zeros() {
    std::vector<Index> stay;
    for (const Index column : in_) {
      if (x_(column) > 0) {
        stay.push_back(column);
      } else {
        x_(column) = 0;
      }
    }
    in_ = stay;
  }

  const Eigen::MatrixXd& columns_;
  const Eigen::VectorXd& heights_;
  Eigen::VectorXd lengths_;
  Eigen::VectorXd x_;
  std::vector<Index> in_;
};

}  // namespace

Eigen::VectorXd non_negative_least_squares(const Eigen::MatrixXd& columns,
                                           const Eigen::VectorXd& heights) {
  return NonNegative(columns, heights).solve();
}

}  // namespace wattweek::metering
