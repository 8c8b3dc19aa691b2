#include "wattweek/decide/quick.hpp"

#include <fmt/format.h>

#include "cli/readings.hpp"
#include "cli/run.hpp"
#include "wattweek/report/report.hpp"
#include "wattweek/units/currency.hpp"

namespace wattweek::cli {
namespace {

std::variant<decide::QuickInput, Misuse> input_of(const Arguments& arguments,
                                                  const Readings& readings) {
  std::optional<double> busy_hours;
  const Limits hours{0, 24, "a number of hours a day, 0 to 24"};
  if (const auto misuse = read_number(arguments, "busy-hours", hours, busy_hours)) return *misuse;
  decide::QuickInput input;
  input.idle_w = readings.idle_w.value_or(input.idle_w);
  input.busy_w = readings.busy_w.value_or(input.busy_w);
  input.busy_hours_a_day = busy_hours.value_or(input.busy_hours_a_day);
  input.price_per_kwh = readings.price_per_kwh.value_or(input.price_per_kwh);
  return input;
}

}  // namespace

Outcome run_quick(const Arguments& arguments, const report::Style& style) {
  const auto format = format_of(*command_named("quick"), arguments);
  if (const auto* misuse = std::get_if<Misuse>(&format)) return refused(misuse->message);
  if (arguments.has("busy") != arguments.has("busy-hours")) {
    return refused("quick: --busy and --busy-hours go together");
  }
  const auto readings = readings_of(arguments);
  if (const auto* misuse = std::get_if<Misuse>(&readings)) return refused(misuse->message);
  const auto input = input_of(arguments, std::get<Readings>(readings));
  if (const auto* misuse = std::get_if<Misuse>(&input)) return refused(misuse->message);
  const auto& asked = std::get<decide::QuickInput>(input);
  const std::string code = std::get<Readings>(readings).currency.value_or("");
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
