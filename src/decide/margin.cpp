#include "wattweek/decide/margin.hpp"

#include <algorithm>

namespace wattweek::decide {

namespace {

bool same(const billing::Ladder& a, const billing::Ladder& b) {
  return std::equal(a.begin(), a.end(), b.begin(), b.end(),
                    [](const billing::Step& x, const billing::Step& y) {
                      return x.up_to == y.up_to && x.price == y.price;
                    });
}

NextKwh next_on(const billing::TariffLaw& law, const billing::Step& step, model::MonthSet months) {
  NextKwh next{months, step.up_to, {}};
  for (const units::UnitPrice price : law.band_prices) {
    next.by_band.push_back((price + step.price) * (1 + law.tax));
  }
  return next;
}

}  // namespace

units::Money cost_of_one_watt(const Assessment& all) {
  const auto bands = static_cast<Eigen::Index>(all.band_hours.size());
  const auto periods = static_cast<Eigen::Index>(all.without.periods.size());
  Eigen::MatrixXd kwh(periods * bands, 1);
  for (Eigen::Index row = 0; row < kwh.rows(); ++row) {
    const auto& period = all.without.periods[static_cast<std::size_t>(row / bands)];
    kwh(row, 0) = units::in_hours(period.band_hours[static_cast<std::size_t>(row % bands)]) / 1000;
  }
  return billing::candidate_cost(all.without, kwh).cost;
}

std::vector<NextKwh> next_kwh(const billing::TariffLaw& law) {
  static const billing::Ladder kNoBlocks = {billing::Step{}};
  std::vector<NextKwh> all;
  model::MonthSet told;
  for (std::size_t m = 0; m < law.ladders.size(); ++m) {
    if (told[m]) continue;
    model::MonthSet months;
    for (std::size_t other = m; other < law.ladders.size(); ++other) {
      months[other] = same(law.ladders[m], law.ladders[other]);
    }
    told |= months;
    for (const auto& step : law.ladders[m].empty() ? kNoBlocks : law.ladders[m]) {
      all.push_back(next_on(law, step, months));
    }
  }
  return all;
}

}  // namespace wattweek::decide
