#include <fmt/format.h>

#include "sections.hpp"
#include "wattweek/billing/tariff_law.hpp"

namespace wattweek::report {
namespace {

using billing::Bill;
using billing::BlockLine;

/// The bills of one month, without and with one candidate.
struct Bills {
  const Shown& s;
  std::size_t month;
  const Bill& without;
  const Bill& with;

  const billing::TariffLaw& law() const { return s.all.without.law; }
  const billing::BillingPeriod& period() const { return s.all.without.periods[month]; }
};

std::string price(const Shown& s, double per_unit) { return price_text(per_unit, s.currency()); }

/// A line without a quantity.
std::vector<std::string> plain(const Bills& b, const std::string& what, units::Money Bill::*line) {
  return {what, "", "", b.s.cost(b.without.*line), "", b.s.cost(b.with.*line)};
}

void add_standing(const Bills& b, Table& table) {
  const auto add = [&](const std::string& what, double times, units::Money each) {
    if (each == units::Money{}) return;
    const std::string sum = b.s.cost(times * each);
    table.rows.push_back({what, price(b.s, units::in_currency(each)), "", sum, "", sum});
  };
  add(fmt::format("standing charge, {} days", rounded(b.period().days, 0)), b.period().days,
      b.law().standing_per_day);
  add("standing charge of the month", 1, b.law().standing_per_month);
}

std::string kwh(units::Energy energy) { return fixed(units::in_kilowatt_hours(energy), 2); }

void add_bands(const Bills& b, Table& table) {
  for (std::size_t i = 0; i < b.with.bands.size(); ++i) {
    const billing::BandLine& without = b.without.bands[i];
    const billing::BandLine& with = b.with.bands[i];
    table.rows.push_back({b.s.study.tariff.bands[i].name,
                          price(b.s, units::in_currency_per_kilowatt_hour(b.law().band_prices[i])),
                          kwh(without.energy), b.s.cost(without.amount), kwh(with.energy),
                          b.s.cost(with.amount)});
  }
}

/// `block up to 200 kWh`.
std::string block_name(const BlockLine& line) {
  return line.up_to
             ? fmt::format("block up to {} kWh", rounded(units::in_kilowatt_hours(*line.up_to), 2))
             : "block beyond";
}

void add_blocks(const Bills& b, Table& table) {
  const billing::Ladder& ladder = b.law().ladders[b.period().month];
  const bool per_day = b.law().blocks_per == model::BlocksPer::day;
  const double factor = per_day ? b.period().days : 1;
  const std::vector<BlockLine> without = billing::ladder_lines(ladder, factor, b.without.energy);
  const std::vector<BlockLine> with = billing::ladder_lines(ladder, factor, b.with.energy);
  for (std::size_t i = 0; i < with.size(); ++i) {
    table.rows.push_back({block_name(with[i]),
                          price(b.s, units::in_currency_per_kilowatt_hour(with[i].price)),
                          kwh(without[i].energy), b.s.cost(without[i].amount), kwh(with[i].energy),
                          b.s.cost(with[i].amount)});
  }
}

std::vector<std::string> total(const Bills& b) {
  return {"total",
          "",
          kwh(b.without.energy),
          b.s.cost(b.without.total),
          kwh(b.with.energy),
          b.s.cost(b.with.total)};
}

Table bill_table(const Bills& b) {
  const std::string& currency = b.s.currency();
  Table table{{{"", Align::left},
               {"price " + currency},
               {"without kWh"},
               {"without " + currency},
               {"with kWh"},
               {"with " + currency}},
              {}};
  add_standing(b, table);
  add_bands(b, table);
  add_blocks(b, table);
  if (b.law().minimum_per_month) {
    table.rows.push_back(plain(b, "up to the minimum bill", &Bill::minimum_top_up));
  }
  if (b.law().tax != 0) {
    table.rows.push_back(
        plain(b, fmt::format("tax, {} %", rounded(100 * b.law().tax, 3)), &Bill::tax));
  }
  table.rows.push_back(total(b));
  return table;
}

std::string difference(const Bills& b) {
  return fmt::format("It adds {} kWh and {}.", kwh(b.with.energy - b.without.energy),
                     money(units::in_currency(b.with.total - b.without.total), b.s.currency()));
}

}  // namespace

Document month_bills(const model::Study& study, const decide::Assessment& all, std::size_t month) {
  const Shown s = shown(study, all);
  const std::string when = calendar::to_text(all.months[month].month);
  Document whole{fmt::format("{}: the electricity bill of {}", study.title, when), {}};
  whole.sections.push_back(
      {"",
       {Paragraph{fmt::format("{}, in {}. Prices before tax. Nothing is rounded before it is "
                              "printed; a bill that rounds each line differs by cents.",
                              study.tariff.name, study.tariff.currency)}}});
  for (std::size_t c = 0; c < study.candidates.size(); ++c) {
    const Bills bills{s, month, all.without.bills[month], all.candidates[c].cost.bills[month]};
    whole.sections.push_back({"Without and with " + study.candidates[c].name,
                              {bill_table(bills), Paragraph{difference(bills)}}});
  }
  return whole;
}

}  // namespace wattweek::report
