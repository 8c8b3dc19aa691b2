#include "wattweek/billing/charges.hpp"

#include <algorithm>

namespace wattweek::billing {

using units::in_currency;
using units::in_currency_per_kilowatt_hour;
using units::in_kilowatt_hours;

ChargeReckoner::ChargeReckoner(const std::vector<BillingPeriod>& periods) : periods_(periods) {
  for (const BillingPeriod& period : periods) {
    units::Hours all;
    for (const units::Hours in_band : period.band_hours) all += in_band;
    for (const units::Hours in_band : period.band_hours) share_of_band_.push_back(in_band / all);
  }
}

void ChargeReckoner::settle(const TariffLaw& law, const std::vector<units::Energy>& household) {
  law_ = &law;
  household_ = &household;
  charges_.resize(periods_.size());
  for (std::size_t p = 0; p < periods_.size(); ++p) {
    charges_[p].standing =
        in_currency(law.standing_per_day * periods_[p].days + law.standing_per_month);
    charges_[p].without = charge(p, nullptr);
  }
}

// Bands and blocks of the household's own energy and, in each band, so much more.
double ChargeReckoner::charge(std::size_t period, const double* extra_kwh) const {
  const std::size_t bands = law_->band_prices.size();
  const double* share = &share_of_band_[period * bands];
  const double own_kwh = in_kilowatt_hours((*household_)[period]);
  double all_kwh = 0;
  double charge = 0;
  for (std::size_t b = 0; b < bands; ++b) {
    const double kwh = own_kwh * share[b] + (extra_kwh == nullptr ? 0.0 : extra_kwh[b]);
    all_kwh += kwh;
    charge += kwh * in_currency_per_kilowatt_hour(law_->band_prices[b]);
  }
  const Ladder& ladder = law_->ladders[periods_[period].month];
  if (ladder.empty()) return charge;
  const double limit_factor = law_->blocks_per == model::BlocksPer::day ? periods_[period].days : 1;
  return charge + in_currency(ladder_amount(ladder, limit_factor, units::kilowatt_hours(all_kwh)));
}

void ChargeReckoner::charge_with(const Eigen::VectorXd& kwh, std::vector<double>& with) const {
  with.resize(periods_.size());
  for (std::size_t p = 0; p < periods_.size(); ++p) {
    with[p] = charge(p, kwh.data() + p * law_->band_prices.size());
  }
}

double ChargeReckoner::cost(const std::vector<double>& with, double price_factor) const {
  double sum = 0;
  if (!law_->minimum_per_month) {
    for (std::size_t p = 0; p < with.size(); ++p) sum += with[p] - charges_[p].without;
    return price_factor * sum * (1 + law_->tax);
  }
  const double minimum = in_currency(*law_->minimum_per_month);
  for (std::size_t p = 0; p < with.size(); ++p) {
    const double before = charges_[p].standing + price_factor * charges_[p].without;
    const double after = charges_[p].standing + price_factor * with[p];
    sum += std::max(minimum, after) - std::max(minimum, before);
  }
  return sum * (1 + law_->tax);
}

}  // namespace wattweek::billing
