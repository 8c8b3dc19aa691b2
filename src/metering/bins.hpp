#pragma once
// Bins of watts, from the bits of the number: its exponent and the first seven bits after it.

#include <bit>
#include <cstddef>
#include <cstdint>

#include "wattweek/metering/measured.hpp"

namespace wattweek::metering::bins {

// A double has 52 bits after the leading one: seven of them stay, so that a power of two is cut in
// 128 bins of one width.
inline constexpr int kDroppedBits = 52 - 7;

inline constexpr std::uint64_t kBelowFirst =
    (std::bit_cast<std::uint64_t>(kLeastBinned_w) >> kDroppedBits) - 1;

inline std::size_t bin_of(double watts) {
  if (watts < kLeastBinned_w) return 0;
  return static_cast<std::size_t>((std::bit_cast<std::uint64_t>(watts) >> kDroppedBits) -
                                  kBelowFirst);
}

inline double lower_w(std::size_t bin) {
  if (bin == 0) return 0;
  return std::bit_cast<double>((bin + kBelowFirst) << kDroppedBits);
}

}  // namespace wattweek::metering::bins
