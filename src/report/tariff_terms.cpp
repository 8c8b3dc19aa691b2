#include "tariff_terms.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "day_words.hpp"
#include "numbers.hpp"
#include "wattweek/billing/tariff_law.hpp"
#include "wattweek/calendar/tariff_walk.hpp"
#include "wattweek/report/words.hpp"
#include "wattweek/units/currency.hpp"

namespace wattweek::report {
namespace {

/// `0.58 (0.6322 with tax)`.
template <class Quantity>
std::string taxed(const units::Range<Quantity>& given, const model::Tariff& tariff) {
  const units::Range<double> before{given.low.in_base(), given.high.in_base()};
  const units::Range<double> with = billing::with_tax(before, tariff.tax);
  const int least = units::minor_digits(tariff.currency);
  const int decimals = decimals_that_show({before}, least, 6);
  const std::string text = range_text(before, decimals);
  if (before == with) return text;
  const int with_decimals = decimals_that_show({with}, least, std::max(decimals, 4));
  return fmt::format("{} ({} with tax)", text, range_text(with, with_decimals));
}

/// `0.14 up to 12 kWh a day, then 0.19`.
std::string ladder(const model::Tariff& tariff, const std::vector<std::size_t>& steps) {
  const char* per = tariff.blocks_per == model::BlocksPer::day ? "day" : "month";
  std::string text;
  for (const std::size_t step : steps) {
    const model::Block& block = tariff.blocks[step];
    const std::string price = taxed(block.price, tariff);
    if (!text.empty()) text += ", then ";
    text += block.up_to_kwh
                ? fmt::format("{} up to {} kWh a {}", price, exact(*block.up_to_kwh), per)
                : price;
  }
  return text;
}

void append_blocks(std::vector<std::string>& all, const model::Tariff& tariff) {
  std::vector<std::pair<std::vector<std::size_t>, model::MonthSet>> seasons;
  for (unsigned m = 0; m < 12; ++m) {
    std::vector<std::size_t> steps;
    for (std::size_t b = 0; b < tariff.blocks.size(); ++b) {
      if (tariff.blocks[b].months[m]) steps.push_back(b);
    }
    auto same = std::find_if(seasons.begin(), seasons.end(),
                             [&steps](const auto& season) { return season.first == steps; });
    if (same == seasons.end()) same = seasons.insert(same, {steps, {}});
    same->second.set(m);
  }
  for (const auto& [steps, months] : seasons) {
    const std::string when = months.all() ? "" : ", " + month_words(months);
    all.push_back(steps.empty() ? fmt::format("Blocks{}: none.", when)
                                : fmt::format("Blocks{}, on top of the bands: {}.", when,
                                              ladder(tariff, steps)));
  }
}

bool is_zero(const model::MoneyRange& range) { return range == model::MoneyRange{}; }

std::string standing(const model::Tariff& tariff) {
  std::vector<std::string> parts;
  if (!is_zero(tariff.standing_per_day)) {
    parts.push_back(taxed(tariff.standing_per_day, tariff) + " a day");
  }
  if (!is_zero(tariff.standing_per_month)) {
    parts.push_back(taxed(tariff.standing_per_month, tariff) + " a month");
  }
  return parts.empty() ? "Standing charge: none."
                       : fmt::format("Standing charge: {}.", listed(parts));
}

std::string minimum(const model::Tariff& tariff) {
  if (!tariff.minimum_per_month) return "Minimum: none.";
  return fmt::format("Minimum: {} a month.", taxed(*tariff.minimum_per_month, tariff));
}

std::string tax(const model::Tariff& tariff) {
  const units::Range<double> percent{tariff.tax.low * 100, tariff.tax.high * 100};
  if (percent == units::Range<double>{}) return "Tax: none is added.";
  const std::string low = rounded(percent.low, 4);
  const std::string high = rounded(percent.high, 4);
  return fmt::format("Tax: {} % on everything.", low == high ? low : low + " to " + high);
}

/// Of dates that are listed: how many, and of which years.
std::string dates(const model::Holidays& holidays) {
  const auto year = [](model::CivilDay day) {
    return static_cast<int>(std::chrono::year_month_day(day).year());
  };
  const int first = year(holidays.dates.front());
  const int last = year(holidays.dates.back());
  const std::size_t count = holidays.dates.size();
  const std::string years =
      first == last ? fmt::format("{}", first) : fmt::format("{} to {}", first, last);
  return fmt::format("{} date{} in {}", count, count == 1 ? "" : "s", years);
}

void append_holidays(std::vector<std::string>& all, const model::Tariff& tariff) {
  const model::Holidays& holidays = tariff.holidays;
  const bool are_listed = !holidays.dates.empty();
  if (!holidays.count_as) {
    if (are_listed) {
      all.push_back(
          fmt::format("Holidays: {}, but without holidays_as ordinary days.", dates(holidays)));
    }
    return;
  }
  const std::string weekday = weekday_word(model::weekday_bit(*holidays.count_as));
  if (calendar::counts_holidays_of_study(tariff)) {
    all.push_back(fmt::format("Holidays: the study's count as {}.", weekday));
  } else if (are_listed) {
    all.push_back(fmt::format("Holidays: {}, counted as {}.", dates(holidays), weekday));
  } else {
    all.push_back(fmt::format("Holidays: none, so none counts as {}.", weekday));
  }
}

}  // namespace

std::vector<std::string> terms(const model::Tariff& tariff) {
  std::vector<std::string> all;
  if (!tariff.blocks.empty()) append_blocks(all, tariff);
  all.push_back(standing(tariff));
  all.push_back(minimum(tariff));
  all.push_back(tax(tariff));
  append_holidays(all, tariff);
  return all;
}

}  // namespace wattweek::report
