#include <fmt/format.h>

#include "document.hpp"
#include "numbers.hpp"
#include "wattweek/report/cautions.hpp"
#include "wattweek/report/report.hpp"

namespace wattweek::report {
namespace {

/// `20 h of each day at 13.5 W and 4 h at 29 W, 16.1 W on average,`.
std::string day(const decide::QuickInput& input, const decide::QuickResult& result) {
  const double busy = input.busy_hours_a_day;
  if (busy == 0) return fmt::format("{} W around the clock", exact(input.idle_w));
  return fmt::format("{} h of each day at {} W and {} h at {} W, {} W on average,",
                     rounded(24 - busy, 2), exact(input.idle_w), rounded(busy, 2),
                     exact(input.busy_w), rounded(result.mean_w, 1));
}

}  // namespace

std::string quick_text(const decide::QuickInput& input, const decide::QuickResult& result,
                       const std::string& currency, const Style& style) {
  const std::string of = currency.empty() ? "" : " " + currency;
  const std::string price = price_text(input.price_per_kwh, currency) + of;
  const auto cost = [&](double value) { return amount(value, currency) + of; };
  Document answer;
  answer.title = fmt::format("{} is {} kWh in 365 days.", day(input, result),
                             fixed(result.energy_kwh, decimals_for({result.energy_kwh})));
  answer.sections.push_back(
      {"",
       {Paragraph{fmt::format("At {} per kWh that costs {} a year, {} a month.", price,
                              cost(result.cost), cost(result.cost / 12))},
        Paragraph{
            fmt::format("1 W all year is 8.76 kWh and costs {}.", cost(result.one_watt_cost))}}});
  answer.sections.push_back({"Bear in mind", {Paragraph{std::string(measuring_caution())}}});
  return lay_out_text(answer, style);
}

}  // namespace wattweek::report
