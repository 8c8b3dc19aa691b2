#pragma once
// The tolerance of the whole project, in one place: results agree to 1e-9 of their size or to
// 1e-6 of their unit, whichever is looser. Doubles carry 16 digits and nothing here loses more
// than five of them.

#include <algorithm>
#include <cmath>
#include <ostream>

namespace wattweek::tests {

struct About {
  double expected;

  friend bool operator==(double got, const About& want) {
    const double difference = std::abs(got - want.expected);
    return difference <= 1e-6 ||
           difference <= 1e-9 * std::max(std::abs(got), std::abs(want.expected));
  }
  friend std::ostream& operator<<(std::ostream& out, const About& about) {
    out.precision(17);
    return out << "about " << about.expected;
  }
};

/// `CHECK(got == about(expected))`.
inline About about(double expected) { return {expected}; }

/// The same for figures that a source prints rounded: within half a unit of their last digit.
struct Printed {
  double expected;
  double half_digit;

  friend bool operator==(double got, const Printed& want) {
    return std::abs(got - want.expected) <= want.half_digit * (1 + 1e-9);
  }
  friend std::ostream& operator<<(std::ostream& out, const Printed& printed) {
    return out << printed.expected << " as printed";
  }
};

/// `CHECK(got == printed(171.55, 2))`: equal once rounded to two decimals.
inline Printed printed(double expected, int decimals) {
  return {expected, 0.5 * std::pow(10.0, -decimals)};
}

/// Exact to the last few bits, where a formula is compared with itself in another form.
struct Exact {
  double expected;

  friend bool operator==(double got, const Exact& want) {
    return std::abs(got - want.expected) <=
           1e-13 * std::max(1.0, std::max(std::abs(got), std::abs(want.expected)));
  }
  friend std::ostream& operator<<(std::ostream& out, const Exact& exact) {
    out.precision(17);
    return out << exact.expected;
  }
};
inline Exact exactly(double expected) { return {expected}; }

}  // namespace wattweek::tests
