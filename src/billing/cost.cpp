#include "wattweek/billing/cost.hpp"

namespace wattweek::billing {

using units::Energy;
using units::Money;

namespace {

// One period of a candidate: its energies by band and cause.
class PeriodCost {
 public:
  PeriodCost(const HouseholdBills& without, std::size_t period, const Eigen::MatrixXd& kwh)
      : law_(without.law),
        bands_(law_.band_prices.size()),
        kwh_(kwh.middleRows(static_cast<Eigen::Index>(period * bands_),
                            static_cast<Eigen::Index>(bands_))) {
    std::vector<Energy> extra;
    for (std::size_t b = 0; b < bands_; ++b) extra.push_back(band_energy(b));
    bill_ = bill(law_, without.periods[period], without.household[period], extra);
    const Bill& before = without.bills[period];
    blocks_cost_ = (bill_.blocks - before.blocks) * with_tax();
    swallowed_ = bill_.minimum_top_up > Money{} && before.minimum_top_up > Money{};
    minimum_cost_ = (bill_.minimum_top_up - before.minimum_top_up) * with_tax();
  }

  void add_to(CandidateCost& sum) const {
    Money plain = blocks_cost_;
    for (std::size_t b = 0; b < bands_; ++b) {
      const Money amount = band_energy(b) * law_.band_prices[b] * with_tax();
      sum.by_band[b] += amount;
      plain += amount;
    }
    // Two bills of the same minimum differ by nothing, exactly: what rounding leaves of the sum
    // would pass for a saving.
    const Money cost = swallowed_ ? Money{} : plain + minimum_cost_;
    sum.cost += cost;
    sum.by_period.push_back(cost);
    sum.blocks_cost += blocks_cost_;
    sum.minimum_cost += swallowed_ ? -plain : minimum_cost_;
    for (std::size_t c = 0; c < sum.by_cause.size(); ++c) sum.by_cause[c] += cause_cost(c);
    sum.bills.push_back(bill_);
  }

 private:
  double with_tax() const { return 1 + law_.tax; }

  Energy band_energy(std::size_t band) const {
    return units::kilowatt_hours(kwh_.row(static_cast<Eigen::Index>(band)).sum());
  }

  // Band energies at band prices, and the share by energy of what the ladder adds.
  Money cause_cost(std::size_t cause) const {
    const auto column = kwh_.col(static_cast<Eigen::Index>(cause));
    Money cost;
    for (std::size_t b = 0; b < bands_; ++b) {
      const Energy energy = units::kilowatt_hours(column(static_cast<Eigen::Index>(b)));
      cost += energy * law_.band_prices[b] * with_tax();
    }
    const double all_kwh = kwh_.sum();
    if (all_kwh > 0) cost += blocks_cost_ * (column.sum() / all_kwh);
    return cost;
  }

  const TariffLaw& law_;
  std::size_t bands_;
  Eigen::MatrixXd kwh_;  // Bands x causes.
  Bill bill_;
  Money blocks_cost_;
  Money minimum_cost_;
  bool swallowed_ = false;
};

}  // namespace

HouseholdBills household_bills(TariffLaw law, std::vector<BillingPeriod> periods,
                               std::vector<Energy> household) {
  HouseholdBills result{std::move(law), std::move(periods), std::move(household), {}};
  const std::vector<Energy> nothing(result.law.band_prices.size());
  for (std::size_t p = 0; p < result.periods.size(); ++p) {
    result.bills.push_back(bill(result.law, result.periods[p], result.household[p], nothing));
  }
  return result;
}

CandidateCost candidate_cost(const HouseholdBills& without, const Eigen::MatrixXd& kwh) {
  CandidateCost sum;
  sum.by_band.resize(without.law.band_prices.size());
  sum.by_cause.resize(static_cast<std::size_t>(kwh.cols()));
  for (std::size_t p = 0; p < without.periods.size(); ++p) {
    PeriodCost(without, p, kwh).add_to(sum);
  }
  return sum;
}

}  // namespace wattweek::billing
