#include "wattweek/chart/axis.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>

namespace wattweek::chart {
namespace {

// In steps: a value that is a mark but for the last bits of a double needs no further mark.
constexpr double kHair = 1e-9;

// Multiplied up, and not by a function of the system's library, so that all give the same bits.
double power_of_ten(int exponent) {
  double power = 1;
  for (int i = 0; i < exponent; ++i) power *= 10;
  return power;
}

// `value` times ten to the power. Dividing by 10 is exact where multiplying by 0.1 is not.
double shifted(double value, int exponent) {
  return exponent >= 0 ? value * power_of_ten(exponent) : value / power_of_ten(-exponent);
}

// How many steps a value is from zero.
double in_steps(const Ticks& ticks, double value) {
  return shifted(value, -ticks.exponent) / ticks.mantissa;
}

// A range that has a width.
Range widened(Range values) {
  const double largest = std::max(std::fabs(values.low), std::fabs(values.high));
  constexpr double kNothing = 1e-200;
  constexpr double kSame = 1e-9;
  if (largest < kNothing) return {0, 1};
  if (values.high - values.low > kSame * largest) return values;
  return {values.low - largest / 10, values.high + largest / 10};
}

// The largest power of ten that is no larger than `value`.
int exponent_of(double value) {
  int exponent = 0;
  while (shifted(1, exponent) > value) --exponent;
  while (shifted(1, exponent + 1) <= value) ++exponent;
  return exponent;
}

void take_next_step(Ticks& ticks) {
  if (ticks.mantissa == 5) ++ticks.exponent;
  ticks.mantissa = ticks.mantissa == 1 ? 2 : ticks.mantissa == 2 ? 5 : 1;
}

}  // namespace

Range with_zero(Range range) { return {std::min(range.low, 0.0), std::max(range.high, 0.0)}; }

double Ticks::at(int i) const { return shifted((first_multiple + i) * mantissa, exponent); }

double Ticks::step() const { return shifted(mantissa, exponent); }

Range Ticks::range() const { return {at(0), at(count - 1)}; }

int Ticks::decimals() const { return std::max(-exponent, 0); }

Ticks nice_ticks(Range values, int most) {
  assert(std::isfinite(values.low) && std::isfinite(values.high) && values.low <= values.high);
  assert(most >= 3);
  const Range wide = widened(values);
  Ticks ticks;
  ticks.exponent = exponent_of((wide.high - wide.low) / most);
  for (;; take_next_step(ticks)) {
    ticks.first_multiple = std::floor(in_steps(ticks, wide.low) + kHair);
    const double steps = std::ceil(in_steps(ticks, wide.high) - kHair) - ticks.first_multiple;
    ticks.count = static_cast<int>(steps) + 1;
    if (ticks.count <= most) return ticks;
  }
}

Ticks within(const Ticks& ticks, Range values) {
  Ticks kept = ticks;
  kept.count = 0;
  for (int i = 0; i < ticks.count; ++i) {
    const double value = ticks.at(i);
    if (value < values.low) ++kept.first_multiple;
    if (value >= values.low && value <= values.high) ++kept.count;
  }
  return kept;
}

double Scale::at(double value) const {
  return from + (to - from) * ((value - values.low) / (values.high - values.low));
}

}  // namespace wattweek::chart
