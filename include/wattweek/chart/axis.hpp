#pragma once
// Where the marks of an axis stand, and where a value stands between them.

namespace wattweek::chart {

/// From `low` to `high`, both within.
struct Range {
  double low = 0;
  double high = 0;
};

/// The range, stretched to reach zero: bars are read by their length, so they begin there.
Range with_zero(Range range);

/// Marks at whole multiples of 1, 2 or 5 times a power of ten. The first is at or below the values
/// that they were made for, the last at or above (but for a billionth of a step).
struct Ticks {
  double first_multiple = 0;  ///< The first mark in steps: a whole number.
  int mantissa = 1;           ///< 1, 2 or 5.
  int exponent = 0;           ///< The step is `mantissa` times ten to this.
  int count = 2;

  /// The value of mark `i`, from 0 to `count - 1`: as near as a double can be, never 0.30000000004.
  double at(int i) const;
  double step() const;
  Range range() const;   ///< From the first mark to the last.
  int decimals() const;  ///< Digits after the point that tell all marks exactly.
};

/// At most `most` marks around the values, the step as small as that allows. Values that are all
/// the same get a tenth of themselves on both sides, and nothing but zero gets 0 to 1.
/// \pre finite, low <= high, magnitudes below 1e300, most >= 3.
Ticks nice_ticks(Range values, int most);

/// The marks that lie within the values; perhaps none.
Ticks within(const Ticks& ticks, Range values);

/// Values of `values` laid evenly on coordinates `from` to `to`; `to` may be the smaller one.
struct Scale {
  Range values;
  double from = 0;
  double to = 1;

  /// The coordinate of a value. \pre `values` is not empty.
  double at(double value) const;
};

}  // namespace wattweek::chart
