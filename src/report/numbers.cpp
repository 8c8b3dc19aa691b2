#include "numbers.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "wattweek/units/currency.hpp"

namespace wattweek::report {

std::string exact(double value) { return fmt::format("{}", value == 0 ? 0.0 : value); }

std::string amount(double value, std::string_view currency) {
  return fixed(value, units::minor_digits(currency));
}

std::string money(double value, std::string_view currency) {
  return fmt::format("{} {}", amount(value, currency), currency);
}

std::string price_text(double price, std::string_view currency) {
  const int least = units::minor_digits(currency);
  const std::string text = rounded(price, least + 2);
  const std::size_t point = text.find('.');
  const std::size_t digits = point == std::string::npos ? 0 : text.size() - point - 1;
  return digits < static_cast<std::size_t>(least) ? fixed(price, least) : text;
}

bool shows_as_zero(double value, std::string_view currency) {
  return amount(value, currency).find_first_not_of("0.") == std::string::npos;
}

int decimals_for(const std::vector<double>& values) {
  double largest = 0;
  for (const double value : values) largest = std::max(largest, std::fabs(value));
  if (largest >= 10 || largest == 0) return 1;
  return largest >= 1 ? 2 : 3;
}

int decimals_that_show(const std::vector<units::Range<double>>& ranges, int least, int most) {
  int needed = least;
  for (const units::Range<double>& range : ranges) {
    for (const double value : {range.low, range.high}) {
      const std::string text = rounded(value, most);
      const std::size_t point = text.find('.');
      if (point == std::string::npos) continue;
      needed = std::max(needed, static_cast<int>(text.size() - point - 1));
    }
  }
  return needed;
}

std::string range_text(const units::Range<double>& range, int decimals) {
  const std::string low = fixed(range.low, decimals);
  const std::string high = fixed(range.high, decimals);
  return low == high ? low : low + " to " + high;
}

}  // namespace wattweek::report
