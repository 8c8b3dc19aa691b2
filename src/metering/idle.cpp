// Idle watts without an activity file.

#include <algorithm>
#include <cmath>

#include "awake_cells.hpp"
#include "wattweek/metering/levels.hpp"
#include "wattweek/metering/long_run.hpp"

namespace wattweek::metering {

namespace {

using Eigen::Index;

// The middle of a level: what lies far from it counts for less, or not at all.
class Middle {
 public:
  Middle(const Measured& measured, const Level& level)
      : measured_(measured),
        level_(level),
        from_(bin_of(level.from_w)),
        to_(std::min(bin_of(level.to_w), measured.histogram.size())),
        middle_w_(median_w()) {
    for (int step = 0; step < kMostSteps; ++step) {
      reach_w_ = kReach * std::max(spread_below_w(), kLeastSteps * measured.resolution_w);
      const double next_w = weighted_mean_w();
      const bool stays = std::abs(next_w - middle_w_) <= kNearEnough * middle_w_;
      middle_w_ = next_w;
      if (stays) break;
    }
  }

  double middle_w() const { return middle_w_; }

  // Of the middle, from parcels: it is where the sum of `pull` over time is 0.
  double noise_error_w() const {
    const std::vector<const Parcel*> all = parcels();
    if (all.empty() || !(reach_w_ > 0)) return 0;
    const std::int32_t first = all.front()->minute;
    const Index minutes = Index{all.back()->minute - first} + 1;
    const Index together = (minutes + kMostCells - 1) / kMostCells;
    const Index cells = (minutes + together - 1) / together;
    Eigen::VectorXd pulls = Eigen::VectorXd::Zero(cells);
    Eigen::VectorXd slopes = Eigen::VectorXd::Zero(cells);
    Eigen::VectorXd seconds = Eigen::VectorXd::Zero(cells);
    for (const Parcel* parcel : all) {
      const Index cell = (parcel->minute - first) / together;
      const double u = (parcel->drawn.mean_w() - middle_w_) / reach_w_;
      pulls(cell) += parcel->drawn.seconds * weight(u) * u * reach_w_;
      slopes(cell) += parcel->drawn.seconds * slope(u);
      seconds(cell) += parcel->drawn.seconds;
    }
    // A parcel is a mean of many bins: its pulls need not sum to 0 to the last.
    pulls -= pulls.sum() / seconds.sum() * seconds;
    const double cell_s = static_cast<double>(together) * measured_.parcel_seconds;
    const LongRun run = long_run(pulls, seconds, cells_in(kLeastKernel_s, cell_s));
    const auto n = static_cast<double>((seconds.array() > 0).count());
    return std::sqrt(run.variance * n / std::max(1.0, n - 1)) / slopes.sum();
  }

 private:
  static constexpr int kMostSteps = 100;
  static constexpr double kNearEnough = 1e-12;
  static constexpr double kLeastSteps = 1.5;
  static constexpr double kReach = 4.685;  // 95 % as sure as the mean, if noise is normal.

  // Tukey's biweight and the slope of weight(u) u, of the distance u as part of the reach.
  static double weight(double u) { return std::abs(u) < 1 ? (1 - u * u) * (1 - u * u) : 0; }
  static double slope(double u) { return std::abs(u) < 1 ? (1 - u * u) * (1 - 5 * u * u) : 0; }

  std::vector<const Parcel*> parcels() const {
    std::vector<const Parcel*> all;
    for (const Parcel& parcel : measured_.parcels) {
      if (lies_in(parcel, level_) && std::abs(parcel.drawn.mean_w() - middle_w_) < reach_w_) {
        all.push_back(&parcel);
      }
    }
    return all;
  }

  template <typename Use>
  void for_each_bin(Use use) const {
    for (std::size_t bin = from_; bin < to_; ++bin) {
      if (measured_.histogram[bin].seconds > 0) use(measured_.histogram[bin]);
    }
  }

  double median_w() const {
    double all_s = 0;
    for_each_bin([&](const Drawn& drawn) { all_s += drawn.seconds; });
    double so_far_s = 0;
    double median_w = 0;
    for_each_bin([&](const Drawn& drawn) {
      if (so_far_s * 2 < all_s) median_w = drawn.mean_w();
      so_far_s += drawn.seconds;
    });
    return median_w;
  }

  double spread_below_w() const {
    double squares = 0;
    double seconds = 0;
    for_each_bin([&](const Drawn& drawn) {
      const double below_w = middle_w_ - drawn.mean_w();
      if (below_w < 0) return;
      squares += drawn.seconds * below_w * below_w;
      seconds += drawn.seconds;
    });
    return seconds > 0 ? std::sqrt(squares / seconds) : 0;
  }

  double weighted_mean_w() const {
    if (!(reach_w_ > 0)) return middle_w_;
    double weights = 0;
    double sum = 0;
    for_each_bin([&](const Drawn& drawn) {
      const double counts = weight((drawn.mean_w() - middle_w_) / reach_w_);
      weights += counts * drawn.seconds;
      sum += counts * drawn.joules;
    });
    return weights > 0 ? sum / weights : middle_w_;
  }

  const Measured& measured_;
  const Level& level_;
  std::size_t from_;
  std::size_t to_;
  double middle_w_;
  double reach_w_ = 0;
};

}  // namespace

std::optional<Estimate> idle_of(const std::vector<Level>& levels, const Measured& measured) {
  for (const Level& level : levels) {
    if (level.state != State::idle) continue;
    const Middle middle(measured, level);
    const double rounding_w = rounding_error_w(measured, level);
    return Estimate{middle.middle_w(), std::hypot(middle.noise_error_w(), rounding_w)};
  }
  return std::nullopt;
}

}  // namespace wattweek::metering
