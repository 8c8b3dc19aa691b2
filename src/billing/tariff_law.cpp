#include "wattweek/billing/tariff_law.hpp"

#include <algorithm>

namespace wattweek::billing {

using units::Energy;
using units::Money;

TariffLaw central_law(const model::Tariff& tariff) {
  TariffLaw law;
  law.tax = tariff.tax.central();
  law.standing_per_day = tariff.standing_per_day.central();
  law.standing_per_month = tariff.standing_per_month.central();
  if (tariff.minimum_per_month) law.minimum_per_month = tariff.minimum_per_month->central();
  for (const model::Band& band : tariff.bands) law.band_prices.push_back(band.price.central());
  for (const model::Block& block : tariff.blocks) {
    Step step{std::nullopt, block.price.central()};
    if (block.up_to_kwh) step.up_to = units::kilowatt_hours(*block.up_to_kwh);
    for (std::size_t month = 0; month < law.ladders.size(); ++month) {
      if (block.months[month]) law.ladders[month].push_back(step);
    }
  }
  law.blocks_per = tariff.blocks_per;
  return law;
}

TariffLaw scale_prices(const TariffLaw& law, double factor) {
  TariffLaw scaled = law;
  for (units::UnitPrice& price : scaled.band_prices) price = price * factor;
  for (Ladder& ladder : scaled.ladders) {
    for (Step& step : ladder) step.price = step.price * factor;
  }
  return scaled;
}

Money ladder_amount(const Ladder& ladder, double limit_factor, Energy consumption) {
  Money amount;
  Energy from;
  for (const Step& step : ladder) {
    if (consumption <= from) break;
    const Energy to = step.up_to ? std::min(*step.up_to * limit_factor, consumption) : consumption;
    amount += (to - from) * step.price;
    from = to;
  }
  return amount;
}

}  // namespace wattweek::billing
