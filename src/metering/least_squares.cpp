#include "wattweek/metering/least_squares.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <numeric>

namespace wattweek::metering {

namespace {

using Eigen::Index;

// Of a dependent column, a part of another one smaller than this is what rounding leaves.
constexpr double kRounding = 1e-6;

Eigen::MatrixXd with_unit_columns(const Eigen::MatrixXd& columns, const Eigen::VectorXd& lengths) {
  return columns * lengths.cwiseInverse().asDiagonal();
}

// Which set each of so many things is in, as sets are joined.
class Joined {
 public:
  explicit Joined(Index things) : set_(static_cast<std::size_t>(things)) {
    std::iota(set_.begin(), set_.end(), 0);
  }
  void join(Index a, Index b) {
    const Index from = set(a);
    const Index to = set(b);
    std::replace(set_.begin(), set_.end(), from, to);
  }
  std::vector<std::vector<Index>> larger_than_one() const {
    std::vector<std::vector<Index>> sets;
    for (Index first = 0; first < static_cast<Index>(set_.size()); ++first) {
      const std::vector<Index> all = members(set(first));
      if (all.size() > 1 && all.front() == first) sets.push_back(all);
    }
    return sets;
  }

 private:
  Index set(Index thing) const { return set_[static_cast<std::size_t>(thing)]; }
  std::vector<Index> members(Index wanted) const {
    std::vector<Index> all;
    for (Index i = 0; i < static_cast<Index>(set_.size()); ++i) {
      if (set(i) == wanted) all.push_back(i);
    }
    return all;
  }

  std::vector<Index> set_;
};

}  // namespace

ScaledQr::ScaledQr(const Eigen::MatrixXd& columns, double in_step)
    : lengths_(columns.colwise().norm()), qr_(columns.rows(), columns.cols()) {
  assert(columns.rows() >= columns.cols() && columns.cols() > 0 && lengths_.minCoeff() > 0);
  qr_.setThreshold(in_step);
  qr_.compute(with_unit_columns(columns, lengths_));
}

Eigen::VectorXd ScaledQr::solve(const Eigen::VectorXd& heights) const {
  assert(is_full_rank());
  return qr_.solve(heights).cwiseQuotient(lengths_);
}

Eigen::MatrixXd ScaledQr::inverse_gram() const {
  assert(is_full_rank());
  const Index n = qr_.cols();
  const Eigen::MatrixXd inverse_r =
      qr_.matrixR().topLeftCorner(n, n).triangularView<Eigen::Upper>().solve(
          Eigen::MatrixXd::Identity(n, n));
  const Eigen::MatrixXd unscaled =
      lengths_.cwiseInverse().asDiagonal() * (qr_.colsPermutation() * inverse_r);
  return unscaled * unscaled.transpose();
}

// With R = [R1 R2; 0 ~0] the pivoted columns behind the rank are R1^-1 R2 of those before it.
std::vector<std::vector<Index>> ScaledQr::dependent_sets() const {
  if (is_full_rank()) return {};
  const Index rank = qr_.rank();
  const Index rest = qr_.cols() - rank;
  const Eigen::MatrixXd parts = qr_.matrixR()
                                    .topLeftCorner(rank, rank)
                                    .triangularView<Eigen::Upper>()
                                    .solve(qr_.matrixR().topRightCorner(rank, rest));
  const auto& place = qr_.colsPermutation().indices();
  Joined joined(qr_.cols());
  for (Index made = 0; made < rest; ++made) {
    for (Index of = 0; of < rank; ++of) {
      if (std::abs(parts(of, made)) > kRounding) joined.join(place(rank + made), place(of));
    }
  }
  return joined.larger_than_one();
}

}  // namespace wattweek::metering
