#pragma once
// How finely a currency is counted. Everything else about money is a bare `Money`.

#include <array>
#include <string_view>

namespace wattweek::units {

namespace currency_detail {
struct Minor {
  std::string_view code;
  int digits;
};
// Source: ISO 4217 list one, column "minor unit" (as of 2025); all others have two.
inline constexpr std::array<Minor, 26> kNotTwo = {{
    {"BIF", 0}, {"CLP", 0}, {"DJF", 0}, {"GNF", 0}, {"ISK", 0}, {"JPY", 0}, {"KMF", 0},
    {"KRW", 0}, {"PYG", 0}, {"RWF", 0}, {"UGX", 0}, {"UYI", 0}, {"VND", 0}, {"VUV", 0},
    {"XAF", 0}, {"XOF", 0}, {"XPF", 0}, {"BHD", 3}, {"IQD", 3}, {"JOD", 3}, {"KWD", 3},
    {"LYD", 3}, {"OMR", 3}, {"TND", 3}, {"CLF", 4}, {"UYW", 4},
}};
}  // namespace currency_detail

/// Digits after the decimal point in amounts of the currency with this ISO 4217 code; 2 for a
/// code that is not known.
constexpr int minor_digits(std::string_view code) {
  for (const auto& minor : currency_detail::kNotTwo) {
    if (minor.code == code) return minor.digits;
  }
  return 2;
}

/// Does a price per kWh look like one in cents, typed where the whole unit is meant? So it does
/// above 3 in a currency with two minor digits (common practice, no source).
constexpr bool price_looks_like_cents(double price_per_kwh, std::string_view code) {
  return price_per_kwh > 3 && minor_digits(code) == 2;
}

}  // namespace wattweek::units
