#pragma once
// A figure that is known only to lie "somewhere between": a meter that flickers from 13 to
// 14 W. Every value between is equally likely; central results use the midpoint.

namespace wattweek::units {

/// An input `[low, high]` with low <= high; a plain number has both ends equal.
/// `T` is a `Quantity` or a bare double.
template <class T>
struct Range {
  T low{};
  T high{};

  constexpr Range() = default;
  constexpr Range(T exact) : low(exact), high(exact) {}  // NOLINT: a number is a range
  constexpr Range(T low_end, T high_end) : low(low_end), high(high_end) {}

  /// The midpoint, exactly `low` where both ends are equal.
  constexpr T central() const { return low == high ? low : (low + high) / 2.0; }
  constexpr bool is_exact() const { return low == high; }

  friend constexpr bool operator==(const Range&, const Range&) = default;
};

}  // namespace wattweek::units
