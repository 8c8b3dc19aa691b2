// What a meter's steps leave in the mean of a level.

#include <algorithm>
#include <cmath>
#include <numbers>

#include "wattweek/metering/levels.hpp"

namespace wattweek::metering {

namespace {

// Two steps that hold this part of a level's time are all that its readings show.
constexpr double kNearlyAll = 0.99;
// Bins whose means lie nearer than this many steps may be neighbouring steps.
constexpr double kTwoSteps = 1.25;
// Farther from the commonest reading, it is no longer noise of the level.
constexpr double kNoiseSteps = 2.5;

class Rounded {
 public:
  Rounded(const Histogram& histogram, double step_w, const Level& level)
      : histogram_(histogram),
        from_(bin_of(level.from_w)),
        to_(std::min(bin_of(level.to_w), histogram_.size())),
        step_w_(step_w) {}

  bool has_time() const { return within(0, lower_w(to_)).seconds > 0; }

  double error_w() const {
    if (!(step_w_ > 0) || !has_time()) return 0;
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

}  // namespace

double rounding_error_w(const Measured& measured, const Level& level) {
  if (measured.carries_rest) return 0;
  return Rounded(measured.histogram, measured.resolution_w, level).error_w();
}

double rounding_error_of_unused_w(const Measured& measured, const Level& level) {
  if (measured.carries_rest) return 0;
  const Rounded unused(measured.unused, measured.resolution_w, level);
  return unused.has_time() ? unused.error_w() : rounding_error_w(measured, level);
}

}  // namespace wattweek::metering
