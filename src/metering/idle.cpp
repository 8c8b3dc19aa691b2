// Idle watts without an activity file, and what rounding leaves in the mean of a level.

#include <algorithm>
#include <cmath>
#include <numbers>

#include "awake_cells.hpp"
#include "wattweek/metering/levels.hpp"
#include "wattweek/metering/long_run.hpp"

namespace wattweek::metering {

namespace {

using Eigen::Index;

// Two steps that hold this part of a level's time are all that its readings show.
constexpr double kNearlyAll = 0.99;
// Bins whose means lie nearer than this many steps may be neighbouring steps.
constexpr double kTwoSteps = 1.25;
// Farther from the commonest reading, it is no longer noise of the level.
constexpr double kNoiseSteps = 2.5;

class Rounded {
 public:
  Rounded(const Measured& measured, const Level& level)
      : histogram_(measured.histogram),
        from_(bin_of(level.from_w)),
        to_(std::min(bin_of(level.to_w), histogram_.size())),
        step_w_(measured.resolution_w) {}

  double error_w() const {
    if (!(step_w_ > 0) || !(within(0, lower_w(to_)).seconds > 0)) return 0;
    return std::max(few_steps_error_w(), noisy_error_w());
  }

 private:
  // Of the level's bins, those with means in [low_w, high_w].
  Drawn within(double low_w, double high_w) const {
    Drawn sum;
    for (std::size_t bin = from_; bin < to_; ++bin) {
      const Drawn& drawn = histogram_[bin];
      if (!(drawn.seconds > 0) || drawn.mean_w() < low_w || drawn.mean_w() > high_w) continue;
      sum.seconds += drawn.seconds;
      sum.joules += drawn.joules;
    }
    return sum;
  }

  // Where one step, or two neighbouring ones, hold nearly all time.
  double few_steps_error_w() const {
    const double all_s = within(0, lower_w(to_)).seconds;
    for (std::size_t bin = from_; bin < to_; ++bin) {
      if (!(histogram_[bin].seconds > 0)) continue;
      const double low_w = histogram_[bin].mean_w();
      const Drawn both = within(low_w, low_w + kTwoSteps * step_w_);
      if (both.seconds < kNearlyAll * all_s) continue;
      const double part = std::clamp((both.mean_w() - low_w) / step_w_, 0.0, 1.0);
      return step_w_ * (0.5 - std::min(part, 1 - part)) / std::numbers::sqrt3;
    }
    return 0;
  }

  double commonest_w() const {
    std::size_t commonest = from_;
    for (std::size_t bin = from_; bin < to_; ++bin) {
      if (histogram_[bin].seconds > histogram_[commonest].seconds) commonest = bin;
    }
    return histogram_[commonest].mean_w();
  }

  // Of readings around the commonest.
  double variance_w2() const {
    const double middle_w = commonest_w();
    double squares = 0;
    const double reach_w = kNoiseSteps * step_w_;
    const Drawn all = within(middle_w - reach_w, middle_w + reach_w);
    for (std::size_t bin = from_; bin < to_; ++bin) {
      const Drawn& drawn = histogram_[bin];
      if (!(drawn.seconds > 0) || std::abs(drawn.mean_w() - middle_w) > reach_w) continue;
      squares += drawn.seconds * std::pow(drawn.mean_w() - all.mean_w(), 2);
    }
    return squares / all.seconds;
  }

  double noisy_error_w() const {
    const double noise = std::max(0.0, variance_w2() / (step_w_ * step_w_) - 1.0 / 12);
    const double pi2 = std::numbers::pi * std::numbers::pi;
    double sum = 0;
    for (int k = 1; k <= 10; ++k) sum += std::exp(-4 * pi2 * k * k * noise) / (2 * pi2 * k * k);
    return step_w_ * std::sqrt(sum);
  }

  const Histogram& histogram_;
  std::size_t from_;
  std::size_t to_;
  double step_w_;
};

// Of the mean of the parcels in the level.
double noise_error_w(const Level& level, const Measured& measured) {
  Drawn all;
  const Parcel* first = nullptr;
  const Parcel* last = nullptr;
  for (const Parcel& parcel : measured.parcels) {
    if (!lies_in(parcel, level)) continue;
    if (first == nullptr) first = &parcel;
    last = &parcel;
    all.seconds += parcel.drawn.seconds;
    all.joules += parcel.drawn.joules;
  }
  if (first == nullptr) return 0;
  const Index minutes = Index{last->minute - first->minute} + 1;
  const Index together = (minutes + kMostCells - 1) / kMostCells;
  Eigen::MatrixXd scores = Eigen::MatrixXd::Zero((minutes + together - 1) / together, 1);
  Eigen::VectorXd seconds = Eigen::VectorXd::Zero(scores.rows());
  for (const Parcel& parcel : measured.parcels) {
    if (!lies_in(parcel, level)) continue;
    const Index cell = (parcel.minute - first->minute) / together;
    scores(cell, 0) += parcel.drawn.joules - parcel.drawn.seconds * all.mean_w();
    seconds(cell) += parcel.drawn.seconds;
  }
  const double cell_s = static_cast<double>(together) * measured.parcel_seconds;
  const LongRun run = long_run(scores, cells_in(kLeastKernel_s, cell_s));
  const auto n = static_cast<double>((seconds.array() > 0).count());
  return std::sqrt(run.covariance(0, 0) * n / std::max(1.0, n - 1)) / all.seconds;
}

}  // namespace

double rounding_error_w(const Measured& measured, const Level& level) {
  return Rounded(measured, level).error_w();
}

std::optional<Estimate> idle_of(const std::vector<Level>& levels, const Measured& measured) {
  for (const Level& level : levels) {
    if (level.state != State::idle) continue;
    const double noise_w = noise_error_w(level, measured);
    return Estimate{level.watts, std::hypot(noise_w, rounding_error_w(measured, level))};
  }
  return std::nullopt;
}

}  // namespace wattweek::metering
