#pragma once
// Figures written the way people write them - "13.5 W", 0,25, 23 % - and what to write instead.

#include <optional>
#include <string>
#include <string_view>

namespace wattweek::read {

/// What a key's number counts.
enum class Unit { none, watts, kwh, money, price, fraction, minutes, kg_per_kwh };

/// A decimal number as text, moved by powers of ten without rounding.
struct Decimal {
  std::string digits;  ///< With sign and point: `-0.25`.
  Decimal shifted(int powers_of_ten) const;
};

/// What to write for `text`, a figure in quotes or with something after it, where a number in
/// `unit` is wanted: "write 13.5". Nothing where the text is no such figure.
std::optional<std::string> number_advice(std::string_view text, Unit unit);

/// What to write for a percentage given as a plain number: `write 0.5 for 50 %`.
std::string percent_advice(std::string_view typed);

/// The text without blanks at both ends.
std::string_view trimmed(std::string_view text);

}  // namespace wattweek::read
