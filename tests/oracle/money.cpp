#include "money.hpp"

#include <algorithm>

namespace wattweek::oracle {
namespace {

double price_of(const model::PriceRange& range) {
  return units::in_currency_per_kilowatt_hour(range.central());
}

double total(const std::vector<double>& numbers) {
  double sum = 0;
  for (const double number : numbers) sum += number;
  return sum;
}

// R9: each block's price on the part of T that falls in it.
double blocks_amount(const model::Tariff& tariff, const BilledMonth& month, double kwh) {
  const unsigned month_bit = static_cast<unsigned>(month.month.month()) - 1;
  double amount = 0;
  double below = 0;
  for (const model::Block& block : tariff.blocks) {
    if (!block.months.test(month_bit)) continue;
    double limit = kwh;
    if (block.up_to_kwh) {
      limit = *block.up_to_kwh * (tariff.blocks_per == model::BlocksPer::day ? month.days : 1);
    }
    const double part = std::min(kwh, limit) - below;
    if (part > 0) amount += part * price_of(block.price);
    below = limit;
  }
  return amount;
}

std::vector<double> by_band(const std::vector<std::vector<double>>& month_energy) {
  std::vector<double> kwh;
  for (const auto& causes : month_energy) kwh.push_back(total(causes));
  return kwh;
}

// R10, one month: bill with it minus bill without it.
double month_cost(const model::Tariff& tariff, const BilledMonth& month,
                  const std::vector<double>& extra_kwh, BillOptions options) {
  const std::vector<double> nothing(extra_kwh.size(), 0.0);
  return bill_of(tariff, month, extra_kwh, options).total -
         bill_of(tariff, month, nothing, options).total;
}

// R11, one month: adds the costs of base and workloads, and of the blocks.
void attribute_month(const model::Tariff& tariff, const BilledMonth& month,
                     const std::vector<std::vector<double>>& energy, CandidateReckoned& candidate) {
  const double tax = tariff.tax.central();
  const double plain = month_cost(tariff, month, by_band(energy), {.with_minimum = false});
  double of_bands = 0;
  double month_kwh = 0;
  std::vector<double> band_cost_of(candidate.workloads.size(), 0.0);
  std::vector<double> kwh_of(candidate.workloads.size(), 0.0);
  for (std::size_t b = 0; b < energy.size(); ++b) {
    const double price = price_of(tariff.bands[b].price) * (1 + tax);
    of_bands += total(energy[b]) * price;
    month_kwh += total(energy[b]);
    for (std::size_t w = 0; w < kwh_of.size(); ++w) {
      band_cost_of[w] += energy[b][1 + w] * price;
      kwh_of[w] += energy[b][1 + w];
    }
  }
  const double blocks = plain - of_bands;
  candidate.blocks_cost += blocks;
  candidate.base_cost += plain;
  for (std::size_t w = 0; w < kwh_of.size(); ++w) {
    const double share = month_kwh > 0 ? kwh_of[w] / month_kwh : 0;
    const double cost = band_cost_of[w] + share * blocks;
    candidate.workloads[w].cost += cost;
    candidate.base_cost -= cost;
  }
}

}  // namespace

Bill bill_of(const model::Tariff& tariff, const BilledMonth& month,
             const std::vector<double>& extra_kwh, BillOptions options) {
  Bill bill;
  bill.standing = units::in_currency(tariff.standing_per_day.central()) * month.days +
                  units::in_currency(tariff.standing_per_month.central());
  bill.kwh = month.household_kwh + total(extra_kwh);
  double amounts = 0;
  for (std::size_t b = 0; b < tariff.bands.size(); ++b) {
    const double part_of_month = month.band_hours[b] / total(month.band_hours);
    const double kwh = month.household_kwh * part_of_month + extra_kwh[b];
    const double amount = kwh * price_of(tariff.bands[b].price) * options.price_factor;
    bill.bands.push_back({kwh, amount});
    amounts += amount;
  }
  bill.blocks = blocks_amount(tariff, month, bill.kwh) * options.price_factor;
  const double sum = bill.standing + amounts + bill.blocks;
  double before_tax = sum;
  if (tariff.minimum_per_month && options.with_minimum) {
    before_tax = std::max(units::in_currency(tariff.minimum_per_month->central()), sum);
  }
  bill.minimum_top_up = before_tax - sum;
  bill.tax = before_tax * tariff.tax.central();
  bill.total = before_tax * (1 + tariff.tax.central());
  return bill;
}

double metered_kwh(const model::Household& household, std::chrono::year_month month) {
  const unsigned month_number = static_cast<unsigned>(month.month());
  if (const auto* by_month = std::get_if<std::array<units::Energy, 12>>(&household.use)) {
    return units::in_kilowatt_hours((*by_month)[month_number - 1]);
  }
  const auto& a_year = std::get<units::Range<units::Energy>>(household.use);
  const auto last = month / std::chrono::last;
  const double days = static_cast<double>(static_cast<unsigned>(last.day()));
  const double days_of_year = month.year().is_leap() ? 366 : 365;
  return units::in_kilowatt_hours(a_year.central()) * days / days_of_year;
}

void reckon_cost(const model::Tariff& tariff, const std::vector<BilledMonth>& months,
                 const EnergyTable& energy, CandidateReckoned& candidate) {
  double plain = 0;
  for (std::size_t m = 0; m < months.size(); ++m) {
    const std::vector<double> kwh = by_band(energy[m]);
    candidate.bills.push_back(bill_of(tariff, months[m], kwh));
    candidate.months[m].cost = month_cost(tariff, months[m], kwh, {});
    candidate.cost += candidate.months[m].cost;
    plain += month_cost(tariff, months[m], kwh, {.with_minimum = false});
    attribute_month(tariff, months[m], energy[m], candidate);
  }
  candidate.minimum_cost = candidate.cost - plain;
  for (std::size_t b = 0; b < tariff.bands.size(); ++b) {
    candidate.bands[b].cost = candidate.bands[b].energy_kwh * price_of(tariff.bands[b].price) *
                              (1 + tariff.tax.central());
  }
}

double cost_at(const model::Tariff& tariff, const std::vector<BilledMonth>& months,
               const EnergyTable& energy, double price_factor) {
  double cost = 0;
  for (std::size_t m = 0; m < months.size(); ++m) {
    cost += month_cost(tariff, months[m], by_band(energy[m]), {.price_factor = price_factor});
  }
  return cost;
}

std::vector<double> minimum_kinks(const model::Tariff& tariff,
                                  const std::vector<BilledMonth>& months,
                                  const EnergyTable& energy) {
  std::vector<double> kinks;
  if (!tariff.minimum_per_month) return kinks;
  const double minimum = units::in_currency(tariff.minimum_per_month->central());
  for (std::size_t m = 0; m < months.size(); ++m) {
    const std::vector<double> nothing(tariff.bands.size(), 0.0);
    for (const std::vector<double>& kwh : {nothing, by_band(energy[m])}) {
      const auto before_tax = [&](double factor) {
        const Bill bill = bill_of(tariff, months[m], kwh, {factor, false});
        return bill.total - bill.tax;
      };
      const double kink = (minimum - before_tax(0)) / (before_tax(1) - before_tax(0));
      if (kink > 0 && kink < 1e6) kinks.push_back(kink);
    }
  }
  return kinks;
}

}  // namespace wattweek::oracle
