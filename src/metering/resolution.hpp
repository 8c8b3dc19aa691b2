#pragma once
// The step in which a meter counts: the greatest common divisor of all differences between its
// values, on a grid of four decimals.

#include <cmath>
#include <cstdint>
#include <numeric>
#include <span>

#include "wattweek/logs/log.hpp"

namespace wattweek::metering {

class Resolution {
 public:
  /// A NaN is passed over.
  void see(std::span<const logs::Reading> readings) {
    for (const logs::Reading& reading : readings) {
      if (!std::isnan(reading.value)) see(reading.value);
    }
  }
  /// \pre 0 <= value, finite
  void see(double value) {
    const std::int64_t now = on_grid(value);
    if (now != last_) see_other(now);
  }
  /// The next value is not compared with the last one.
  void forget_last() { last_ = kNone; }
  /// In the unit of the values; 0 where all are equal.
  double step() const { return static_cast<double>(step_) / kGrid; }

 private:
  static constexpr double kGrid = 1e4;
  static constexpr double kHighest = 1e14;  // Beyond, a double has no four decimals anyway.
  static constexpr std::int64_t kNone = -1;

  static std::int64_t on_grid(double value) {
    return static_cast<std::int64_t>((value < kHighest ? value : kHighest) * kGrid + 0.5);
  }
  void see_other(std::int64_t now) {
    const std::uint64_t apart = static_cast<std::uint64_t>(now < last_ ? last_ - now : now - last_);
    const bool first = last_ == kNone;
    last_ = now;
    if (first || (step_ != 0 && apart % step_ == 0)) return;
    step_ = std::gcd(step_, apart);
  }

  std::int64_t last_ = kNone;
  std::uint64_t step_ = 0;
};

}  // namespace wattweek::metering
