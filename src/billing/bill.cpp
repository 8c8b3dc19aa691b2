#include "wattweek/billing/bill.hpp"

#include <algorithm>

namespace wattweek::billing {

using units::Energy;
using units::Hours;
using units::Money;

Bill bill(const TariffLaw& law, const BillingPeriod& period, Energy household,
          const std::vector<Energy>& extra) {
  Hours hours;
  for (const Hours in_band : period.band_hours) hours += in_band;

  Bill bill;
  bill.standing = law.standing_per_day * period.days + law.standing_per_month;
  Money charged = bill.standing;
  for (std::size_t b = 0; b < law.band_prices.size(); ++b) {
    const Energy energy = household * (period.band_hours[b] / hours) + extra[b];
    bill.bands.push_back({energy, energy * law.band_prices[b]});
    bill.energy += energy;
    charged += bill.bands.back().amount;
  }
  const double limit_factor = law.blocks_per == model::BlocksPer::day ? period.days : 1;
  bill.blocks = ladder_amount(law.ladders[period.month], limit_factor, bill.energy);
  charged += bill.blocks;
  if (law.minimum_per_month) {
    bill.minimum_top_up = std::max(Money{}, *law.minimum_per_month - charged);
  }
  charged += bill.minimum_top_up;
  bill.tax = charged * law.tax;
  bill.total = charged + bill.tax;
  return bill;
}

}  // namespace wattweek::billing
