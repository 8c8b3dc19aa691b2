#pragma once
// Numbers and ranges with their bounds: `num±` and its stricter forms.

#include <optional>
#include <string>
#include <vector>

#include "slips.hpp"
#include "value.hpp"
#include "wattweek/units/quantity.hpp"
#include "wattweek/units/range.hpp"

namespace wattweek::read {

enum class Bounds {
  any,
  not_negative,  ///< 0 or more
  positive,      ///< above 0
  fraction,      ///< 0 to 1
  rate,          ///< above -1: what is left after a year is above nothing
};

/// What a key's number may be. No number in a file may be above `kLargest`, so that nothing
/// that is computed from them overflows.
struct NumberRule {
  Bounds bounds = Bounds::any;
  Unit unit = Unit::none;
};

inline constexpr double kLargest = 1e12;

inline constexpr NumberRule kWatts{Bounds::not_negative, Unit::watts};
inline constexpr NumberRule kMoney{Bounds::any, Unit::money};
inline constexpr NumberRule kPrice{Bounds::any, Unit::price};
inline constexpr NumberRule kRate{Bounds::rate, Unit::fraction};

/// `num±`: a number or `[low, high]`.
std::optional<units::Range<double>> read_range(const Value& value, NumberRule rule);

/// A single number.
std::optional<double> read_number(const Value& value, NumberRule rule);

/// A whole number from `least` to `most`; `meaning` goes into the message: ", the year ...".
struct WholeRule {
  int least = 1;
  int most = 1;
  std::string_view meaning;
};
std::optional<int> read_whole(const Value& value, const WholeRule& rule);

/// An array of so many single numbers; `order` goes into the message: "January to December".
struct SeriesRule {
  std::size_t count = 1;
  std::string_view order;
};
std::optional<std::vector<double>> read_series(const Value& value, SeriesRule series,
                                               NumberRule rule);

/// An array of at least `least` single numbers that never fall.
std::optional<std::vector<double>> read_rising(const Value& value, std::size_t least,
                                               NumberRule rule);

/// What is accepted, in words: "a number or a range [low, high], not below 0, in W".
std::string accepted_range(NumberRule rule);
std::string accepted_number(NumberRule rule);

/// The same range as a quantity, in the quantity's base unit.
template <class Quantity>
units::Range<Quantity> as(const units::Range<double>& range) {
  return {Quantity::from_base(range.low), Quantity::from_base(range.high)};
}

}  // namespace wattweek::read
