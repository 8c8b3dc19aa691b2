#include "wattweek/diag/number_text.hpp"

#include <fmt/format.h>

#include <cmath>

namespace wattweek::diag {
namespace {

/// A few units in the last place away from zero, so that the doubles of written halves lie above
/// them. Above the limit that much could show.
double nudged(double value) {
  constexpr double kLargest = 1e11;
  constexpr double kNudge = 1e-15;
  return std::fabs(value) < kLargest ? value * (1 + kNudge) : value;
}

}  // namespace

std::string fixed(double value, int decimals) {
  std::string text = fmt::format("{:.{}f}", nudged(value), decimals);
  const bool zero = text.find_first_not_of("-0.") == std::string::npos;
  if (zero && text.front() == '-') text.erase(0, 1);
  return text;
}

std::string rounded(double value, int decimals) {
  std::string text = fixed(value, decimals);
  if (text.find('.') == std::string::npos) return text;
  text.erase(text.find_last_not_of('0') + 1);
  if (text.back() == '.') text.pop_back();
  return text;
}

}  // namespace wattweek::diag
