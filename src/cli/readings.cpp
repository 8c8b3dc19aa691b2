#include "cli/readings.hpp"

#include <fmt/format.h>

namespace wattweek::cli {
namespace {

// As in a profile or a tariff nothing stops large figures, but those that no home can have are
// slips, and would overflow in the end.
constexpr double kMostWatts = 1e9;
constexpr double kMostPrice = 1e9;

const Limits kAnyWatts{0, kMostWatts, "a number of watts, 0 to 1e9"};
const Limits kAnyPrice{-kMostPrice, kMostPrice, "a price of a kWh, -1e9 to 1e9"};

std::optional<Misuse> read_busy(const Arguments& arguments, Readings& readings) {
  if (!readings.idle_w) return read_number(arguments, "busy", kAnyWatts, readings.busy_w);
  const std::string from_idle =
      fmt::format("a number of watts, not below --idle ({}), up to 1e9", *readings.idle_w);
  return read_number(arguments, "busy", {*readings.idle_w, kMostWatts, from_idle}, readings.busy_w);
}

std::optional<Misuse> read_currency(const Arguments& arguments, Readings& readings) {
  readings.currency = arguments.value("currency");
  if (!readings.currency) return std::nullopt;
  const std::string& code = *readings.currency;
  const bool capitals = code.find_first_not_of("ABCDEFGHIJKLMNOPQRSTUVWXYZ") == std::string::npos;
  if (capitals && code.size() == 3) return std::nullopt;
  return Misuse{fmt::format(
      "--currency: found '{}', accepted are the three capitals of a currency, such as EUR", code)};
}

}  // namespace

std::optional<Misuse> read_number(const Arguments& arguments, std::string_view option,
                                  const Limits& limits, std::optional<double>& target) {
  const std::optional<std::string> text = arguments.value(option);
  if (!text) return std::nullopt;
  const auto value = number(option, *text, limits);
  if (const auto* misuse = std::get_if<Misuse>(&value)) return *misuse;
  target = std::get<double>(value);
  return std::nullopt;
}

std::variant<Readings, Misuse> readings_of(const Arguments& arguments) {
  Readings readings;
  if (const auto misuse = read_number(arguments, "idle", kAnyWatts, readings.idle_w)) {
    return *misuse;
  }
  if (const auto misuse = read_busy(arguments, readings)) return *misuse;
  if (const auto misuse = read_number(arguments, "price", kAnyPrice, readings.price_per_kwh)) {
    return *misuse;
  }
  if (const auto misuse = read_currency(arguments, readings)) return *misuse;
  return readings;
}

}  // namespace wattweek::cli
