#include "spoken.hpp"

#include <fmt/format.h>

#include <array>
#include <cmath>

#include "numbers.hpp"

namespace wattweek::report {
namespace {

int decimals_of_width(const decide::Spread& spread) {
  const double width = spread.p97_5 - spread.p2_5;
  return width >= 5 ? 0 : width >= 0.5 ? 1 : 2;
}

}  // namespace

std::string spoken(double value) {
  const double size = std::fabs(value);
  return fixed(value, size >= 9.95 || size == 0 ? 0 : size >= 0.995 ? 1 : 2);
}

std::string spoken_amount(double value, std::string_view currency) {
  const bool is_whole = value == 0 || std::fabs(value) >= 9.995;
  return is_whole ? fixed(value, 0) : amount(value, currency);
}

std::string spoken_money(double value, std::string_view currency) {
  return fmt::format("{} {}", spoken_amount(value, currency), currency);
}

std::string capitalised(std::string sentence) {
  char& first = sentence.front();
  if (first >= 'a' && first <= 'z') first = static_cast<char>(first - 'a' + 'A');
  return sentence;
}

std::string month_name(std::chrono::year_month month) {
  constexpr std::array<std::string_view, 12> kNames = {
      "January", "February", "March",     "April",   "May",      "June",
      "July",    "August",   "September", "October", "November", "December"};
  return fmt::format("{} {}", kNames[static_cast<unsigned>(month.month()) - 1],
                     static_cast<int>(month.year()));
}

std::string with_range(double central, const decide::Spread& spread) {
  const std::string middle = fixed(central, decimals_of_width(spread));
  const std::string range = likely_range(spread);
  return range == middle ? middle : fmt::format("{} ({})", middle, range);
}

std::string likely_range(const decide::Spread& spread) {
  return range_text({spread.p2_5, spread.p97_5}, decimals_of_width(spread));
}

std::string percent_of(double fraction) {
  const std::string text = rounded(100 * fraction, 0);
  if (fraction > 0 && text == "0") return "below 1 %";
  if (fraction < 1 && text == "100") return "above 99 %";
  return text + " %";
}

}  // namespace wattweek::report
