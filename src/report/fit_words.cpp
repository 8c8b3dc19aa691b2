#include "fit_words.hpp"

#include "numbers.hpp"

namespace wattweek::report {
namespace {

constexpr double kFew_kwh = 0.01;
constexpr double kFewHours = 2;

}  // namespace

std::string watts(double value) { return fixed(value, decimals_for({value})) + " W"; }

std::string kwh(double value) {
  if (value > 0 && value < kFew_kwh) return rounded(1'000 * value, 3) + " Wh";
  return fixed(value, decimals_for({value})) + " kWh";
}

std::string hours(double value) {
  return value < kFewHours ? duration(3'600 * value) : fixed(value, decimals_for({value})) + " h";
}

std::string duration(double seconds) {
  if (seconds < 120) return rounded(seconds, 1) + " s";
  if (seconds < 7'200) return rounded(seconds / 60, 1) + " min";
  if (seconds < 48 * 3'600) return rounded(seconds / 3'600, 1) + " h";
  return rounded(seconds / 86'400, 1) + " days";
}

std::string percent(double part) {
  // What is not quite all is never called all.
  const double shown = part < 1 && part > 0.999 ? 99.9 : 100 * part;
  return rounded(shown, 1) + " %";
}

}  // namespace wattweek::report
