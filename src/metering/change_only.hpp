#pragma once
// Does a log of power hold a row only when the value moved?
//
// It does where neighbouring values differ (at most one pair in twenty is equal) and steps are
// irregular. Steps are irregular where fewer than half of them lie within the larger of 1 s and 2 %
// of their median, and fewer than four in five within a quarter of it: a poll that trembles, or
// that loses a row now and then, is regular.
//
// Values themselves tell more where they come back: in a log of all rows a value that is often
// found again two rows later is found in the next row as well; in a log of changes it never is.
// Where readings return (a, b, a) five times or more, and ten times as often as neighbours are
// equal, nine in ten steps within 1 s or 2 % of the median are asked for before steps are regular:
// then rows come on the beat of the plug's own sampling, and only some of them.

#include <cmath>
#include <cstdint>
#include <span>

#include "step_lengths.hpp"

namespace wattweek::metering {

class ChangeOnly {
 public:
  /// In order of time; a NaN where there is no value.
  void see(std::span<const logs::Reading> readings);
  bool holds(const StepLengths& steps) const;

 private:
  double last_ = std::nan("");
  double before_last_ = std::nan("");
  std::uint64_t pairs_ = 0;
  std::uint64_t equal_ = 0;
  std::uint64_t returns_ = 0;
};

}  // namespace wattweek::metering
