#pragma once
// Numbers by chance for made logs: the same on every machine.

#include <cmath>
#include <cstdint>
#include <numbers>
#include <random>

namespace wattweek::metering {

class Chance {
 public:
  explicit Chance(std::uint64_t seed) : bits_(seed) { bits_.discard(8); }

  /// Even in [0, 1).
  double even() { return static_cast<double>(bits_() >> 11U) * 0x1p-53; }
  /// Normal, mean 0 and standard deviation 1 (G. E. P. Box and M. E. Muller, Annals of Mathematical
  /// Statistics 29 (1958), 610-611).
  double normal() {
    if (kept_) {
      kept_ = false;
      return other_;
    }
    const double radius = std::sqrt(-2 * std::log(1 - even()));
    const double angle = 2 * std::numbers::pi * even();
    other_ = radius * std::sin(angle);
    kept_ = true;
    return radius * std::cos(angle);
  }

 private:
  std::mt19937_64 bits_;
  bool kept_ = false;
  double other_ = 0;
};

/// Noise whose memory fades within so many seconds: an autoregression of the first order.
class FadingNoise {
 public:
  FadingNoise(double sd, double memory_s, double step_s)
      : sd_(sd), stays_(std::exp(-step_s / memory_s)), fresh_(std::sqrt(1 - stays_ * stays_)) {}

  double next(Chance& chance) {
    now_ = begun_ ? stays_ * now_ + fresh_ * chance.normal() : chance.normal();
    begun_ = true;
    return sd_ * now_;
  }

 private:
  double sd_;
  double stays_;
  double fresh_;
  double now_ = 0;
  bool begun_ = false;
};

/// A reading to whole steps.
inline double to_steps(double watts, double step_w) {
  return step_w > 0 ? std::max(0.0, std::round(watts / step_w) * step_w) : std::max(0.0, watts);
}

}  // namespace wattweek::metering
