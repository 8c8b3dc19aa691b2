#include <fmt/format.h>

#include "numbers.hpp"
#include "wattweek/report/report.hpp"

namespace wattweek::report {

std::string quick_text(const decide::QuickInput& input, const decide::QuickResult& result,
                       const std::string& currency) {
  const double busy = input.busy_hours_a_day;
  const std::string day =
      busy == 0 ? fmt::format("{} W around the clock", exact(input.idle_w))
                : fmt::format("{} h of each day at {} W and {} h at {} W, {} W on average,",
                              rounded(24 - busy, 2), exact(input.idle_w), rounded(busy, 2),
                              exact(input.busy_w), rounded(result.mean_w, 1));
  const std::string of = currency.empty() ? "" : " " + currency;
  const std::string year = amount(result.cost, currency) + of;
  const std::string month = amount(result.cost / 12, currency) + of;
  return fmt::format(
      "{} is {} kWh in 365 days.\n"
      "At {}{} per kWh that costs {} a year, {} a month.\n",
      day, fixed(result.energy_kwh, decimals_for({result.energy_kwh})), exact(input.price_per_kwh),
      of, year, month);
}

}  // namespace wattweek::report
