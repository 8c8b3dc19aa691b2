#pragma once
// Chance that falls the same way on every platform: the standard fixes the numbers that the
// engine gives, and what we make of them is ours.

#include <fmt/format.h>

#include <algorithm>
#include <cstdint>
#include <random>
#include <string>
#include <vector>

namespace wattweek::oracle {

/// An input figure in thousandths, both ends equal unless it is a range.
struct Figure {
  int low_milli = 0;
  int high_milli = 0;

  /// As it stands in a file: `5.2`, or `[5.2, 6]`.
  std::string text() const {
    if (low_milli == high_milli) return fmt::format("{}", low_milli / 1000.0);
    return fmt::format("[{}, {}]", low_milli / 1000.0, high_milli / 1000.0);
  }
};

class Dice {
 public:
  explicit Dice(std::uint64_t seed) : engine_(seed) {}

  /// A whole number, both ends included.
  int between(int low, int high) {
    const auto sides = static_cast<std::uint64_t>(std::int64_t{high} - low + 1);
    return static_cast<int>(low + static_cast<std::int64_t>(engine_() % sides));
  }

  bool chance(int percent) { return between(1, 100) <= percent; }

  template <class T>
  T pick(const std::vector<T>& from) {
    return from[static_cast<std::size_t>(between(0, static_cast<int>(from.size()) - 1))];
  }

  /// A figure between the ends, given in thousandths; one in four is a range.
  Figure figure(int low_milli, int high_milli) {
    const int a = between(low_milli, high_milli);
    const int b = chance(25) ? between(low_milli, high_milli) : a;
    return {std::min(a, b), std::max(a, b)};
  }

 private:
  std::mt19937_64 engine_;
};

}  // namespace wattweek::oracle
