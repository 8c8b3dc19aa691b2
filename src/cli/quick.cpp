#include "wattweek/decide/quick.hpp"

#include <fmt/format.h>

#include <limits>

#include "cli/run.hpp"
#include "wattweek/report/report.hpp"
#include "wattweek/units/currency.hpp"

namespace wattweek::cli {
namespace {

// As in a profile or a tariff nothing stops large figures, but those that no home can have are
// slips, and would overflow in the end.
constexpr double kMostWatts = 1e9;
constexpr double kMostPrice = 1e9;

/// Reads one number into `target`; leaves it where the option is absent.
std::optional<Misuse> read_number(const Arguments& arguments, std::string_view option,
                                  const Limits& limits, double& target) {
  const std::optional<std::string> text = arguments.value(option);
  if (!text) return std::nullopt;
  const auto value = number(option, *text, limits);
  if (const auto* misuse = std::get_if<Misuse>(&value)) return *misuse;
  target = std::get<double>(value);
  return std::nullopt;
}

std::variant<decide::QuickInput, Misuse> input_of(const Arguments& arguments) {
  if (arguments.has("busy") != arguments.has("busy-hours")) {
    return Misuse{"quick: --busy and --busy-hours go together"};
  }
  decide::QuickInput input;
  const Limits idle{0, kMostWatts, "a number of watts, 0 to 1e9"};
  if (const auto misuse = read_number(arguments, "idle", idle, input.idle_w)) return *misuse;
  const std::string from_idle =
      fmt::format("a number of watts, not below --idle ({}), up to 1e9", input.idle_w);
  const Limits busy{input.idle_w, kMostWatts, from_idle};
  if (const auto misuse = read_number(arguments, "busy", busy, input.busy_w)) return *misuse;
  const Limits hours{0, 24, "a number of hours a day, 0 to 24"};
  if (const auto misuse = read_number(arguments, "busy-hours", hours, input.busy_hours_a_day)) {
    return *misuse;
  }
  const Limits price{-kMostPrice, kMostPrice, "a price of a kWh, -1e9 to 1e9"};
  if (const auto misuse = read_number(arguments, "price", price, input.price_per_kwh)) {
    return *misuse;
  }
  return input;
}

std::variant<std::string, Misuse> currency_of(const Arguments& arguments) {
  const std::string code = arguments.value("currency").value_or("");
  const bool capitals = code.find_first_not_of("ABCDEFGHIJKLMNOPQRSTUVWXYZ") == std::string::npos;
  if (!arguments.has("currency") || (capitals && code.size() == 3)) return code;
  return Misuse{fmt::format(
      "--currency: found '{}', accepted are the three capitals of a currency, such as EUR", code)};
}

}  // namespace

Outcome run_quick(const Arguments& arguments, const report::Style& style) {
  const auto format = format_of(*command_named("quick"), arguments);
  if (const auto* misuse = std::get_if<Misuse>(&format)) return refused(misuse->message);
  const auto input = input_of(arguments);
  if (const auto* misuse = std::get_if<Misuse>(&input)) return refused(misuse->message);
  const auto currency = currency_of(arguments);
  if (const auto* misuse = std::get_if<Misuse>(&currency)) return refused(misuse->message);
  const auto& asked = std::get<decide::QuickInput>(input);
  const auto& code = std::get<std::string>(currency);
  const decide::QuickResult result = decide::quick(asked);
  Outcome outcome{kDone, std::get<std::string>(format) == "json"
                             ? report::quick_json(result, code)
                             : report::quick_text(asked, result, code, style)};
  if (units::price_looks_like_cents(asked.price_per_kwh, code)) {
    outcome.err = fmt::format(
        "wattweek: note: a price of {} per kWh looks like one in hundredths; write {:.12g} if it "
        "is\n",
        asked.price_per_kwh, asked.price_per_kwh / 100);
  }
  return outcome;
}

}  // namespace wattweek::cli
