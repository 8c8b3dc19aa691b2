#include "wattweek/billing/tariff_law.hpp"

#include <algorithm>

namespace wattweek::billing {

using units::Energy;
using units::Money;

namespace {

/// Calls `visit(step, energy)` for each step with what of the consumption lies on it.
template <class Visit>
void visit_steps(const Ladder& ladder, double limit_factor, Energy consumption, Visit visit) {
  Energy from;
  for (const Step& step : ladder) {
    Energy to = consumption;
    if (step.up_to) to = std::clamp(*step.up_to * limit_factor, from, std::max(from, consumption));
    visit(step, to - from);
    from = to;
  }
}

}  // namespace

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
  visit_steps(ladder, limit_factor, consumption,
              [&](const Step& step, Energy on_step) { amount += on_step * step.price; });
  return amount;
}

std::vector<BlockLine> ladder_lines(const Ladder& ladder, double limit_factor, Energy consumption) {
  std::vector<BlockLine> lines;
  visit_steps(ladder, limit_factor, consumption, [&](const Step& step, Energy on_step) {
    lines.push_back({std::nullopt, on_step, step.price, on_step * step.price});
    if (step.up_to) lines.back().up_to = *step.up_to * limit_factor;
  });
  return lines;
}

}  // namespace wattweek::billing
