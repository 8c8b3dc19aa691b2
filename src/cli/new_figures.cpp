#include "cli/new_figures.hpp"

#include <fmt/format.h>

#include <charconv>
#include <cmath>

#include "wattweek/diag/printable.hpp"
#include "wattweek/units/currency.hpp"

namespace wattweek::cli {
namespace {

// An older desktop machine that became a server. Common practice, no source.
constexpr double kGuessedIdleW = 50;
constexpr double kGuessedStreamW = 5;
// 0.30 and 200 in a currency of two minor digits, 30 and 20000 in one without any.
constexpr double kGuessedPriceMinor = 30;
constexpr double kGuessedPurchaseMinor = 20000;
constexpr double kNightDiscount = 0.4;

double in_whole_units(double minor, const std::string& currency) {
  return minor / std::pow(10.0, units::minor_digits(currency));
}

/// Without the noise that a subtraction leaves in the last digits: 7.85, not 7.850000000000001.
double tidy(double value, int digits) {
  const std::string text = fmt::format("{:.{}g}", value, digits);
  double tidied = value;
  std::from_chars(text.data(), text.data() + text.size(), tidied);
  return tidied;
}

}  // namespace

NewFigures new_figures(const Readings& readings) {
  NewFigures all;
  all.is_idle_given = readings.idle_w.has_value();
  all.is_busy_given = readings.busy_w.has_value();
  const double guessed_idle_w = all.is_busy_given ? *readings.busy_w / 2 : kGuessedIdleW;
  all.idle_w = readings.idle_w.value_or(guessed_idle_w);
  all.busy_w = readings.busy_w.value_or(all.idle_w + kStreams * kGuessedStreamW);
  all.stream_w =
      all.is_busy_given ? tidy((all.busy_w - all.idle_w) / kStreams, 12) : kGuessedStreamW;
  all.is_currency_given = readings.currency.has_value();
  all.currency = readings.currency.value_or("EUR");
  all.is_price_given = readings.price_per_kwh.has_value();
  const double guessed_price = in_whole_units(kGuessedPriceMinor, all.currency);
  all.price_per_kwh = readings.price_per_kwh.value_or(guessed_price);
  const double discount = kNightDiscount * std::fabs(all.price_per_kwh);
  all.night_price_per_kwh = tidy(all.price_per_kwh - discount, 3);
  all.purchase = in_whole_units(kGuessedPurchaseMinor, all.currency);
  return all;
}

std::string toml_number(double value) {
  const std::string text = plain_number(value);
  return text.find_first_of(".e") == std::string::npos ? text + ".0" : text;
}

std::string toml_string(const std::string& text) {
  std::string quoted = "\"";
  for (const char letter : diag::printable(text)) {
    if (letter == '"' || letter == '\\') quoted += '\\';
    quoted += letter;
  }
  return quoted + '"';
}

std::string plain_number(double value) { return fmt::format("{}", value == 0 ? 0.0 : value); }

}  // namespace wattweek::cli
