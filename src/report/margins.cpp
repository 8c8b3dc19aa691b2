#include <fmt/format.h>

#include <algorithm>

#include "day_words.hpp"
#include "sections.hpp"
#include "wattweek/decide/margin.hpp"

namespace wattweek::report {
namespace {

std::string one_watt(const Shown& s) {
  const std::string what = s.is_year() ? "1 W all year" : "1 W all through the study";
  return fmt::format("{} is {} kWh and costs {}.", what, fixed(s.all.hours / 1000, 2),
                     money(units::in_currency(decide::cost_of_one_watt(s.all)), s.currency()));
}

/// Two digits more than amounts have: prices per kWh are quoted so.
std::string price(const Shown& s, units::UnitPrice price) {
  return price_text(units::in_currency_per_kilowatt_hour(price), s.currency());
}

std::string of_all_bands(const Shown& s, const decide::NextKwh& next) {
  if (next.by_band.size() == 1)
    return fmt::format("{} {}", price(s, next.by_band[0]), s.currency());
  std::vector<std::string> parts;
  for (std::size_t b = 0; b < next.by_band.size(); ++b) {
    parts.push_back(fmt::format("{} {} ({})", price(s, next.by_band[b]), s.currency(),
                                s.study.tariff.bands[b].name));
  }
  return joined(parts);
}

/// `up to 200 kWh a month, nov to feb`; of months with one price for all, the months alone.
std::string block(const Shown& s, const decide::NextKwh& next, bool is_alone) {
  const std::string months = month_words(next.months);
  if (is_alone) return months;
  const char* per = s.all.without.law.blocks_per == model::BlocksPer::day ? "day" : "month";
  const std::string text =
      next.up_to
          ? fmt::format("up to {} kWh a {}", rounded(units::in_kilowatt_hours(*next.up_to), 3), per)
          : "beyond that";
  return next.months.all() ? text : text + ", " + months;
}

List by_block(const Shown& s, const std::vector<decide::NextKwh>& all) {
  List list;
  for (const decide::NextKwh& next : all) {
    const auto steps = std::count_if(all.begin(), all.end(), [&next](const decide::NextKwh& other) {
      return other.months == next.months;
    });
    list.items.push_back(fmt::format("{}: {}", block(s, next, steps == 1), of_all_bands(s, next)));
  }
  return list;
}

}  // namespace

Section margins(const Shown& s) {
  Section section{"What a little more costs", {Paragraph{one_watt(s)}}};
  const std::vector<decide::NextKwh> all = decide::next_kwh(s.all.without.law);
  if (all.size() == 1) {
    section.blocks.emplace_back(
        Paragraph{fmt::format("The next kWh costs {}, tax included.", of_all_bands(s, all[0]))});
  } else {
    section.blocks.emplace_back(Paragraph{"The next kWh costs, tax included:"});
    section.blocks.emplace_back(by_block(s, all));
  }
  if (s.all.without.law.minimum_per_month) {
    section.blocks.emplace_back(
        Paragraph{"In a month that stays below the minimum bill it costs nothing."});
  }
  return section;
}

}  // namespace wattweek::report
