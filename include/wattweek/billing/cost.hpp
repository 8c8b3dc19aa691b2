#pragma once
// What a candidate adds to the household's bills, and who of it adds what.

#include <Eigen/Core>
#include <vector>

#include "wattweek/billing/bill.hpp"

namespace wattweek::billing {

/// The household's bills without any candidate, and what they were reckoned from.
struct HouseholdBills {
  TariffLaw law;
  std::vector<BillingPeriod> periods;
  std::vector<units::Energy> household;  ///< Own use, by period.
  std::vector<Bill> bills;
};

HouseholdBills household_bills(TariffLaw law, std::vector<BillingPeriod> periods,
                               std::vector<units::Energy> household);

/// A candidate's cost over all periods: bills with it less bills without it.
///
///     cost = sum of band costs + blocks_cost + minimum_cost
struct CandidateCost {
  units::Money cost;
  units::Money blocks_cost;   ///< What the ladders add beyond the band prices, with tax.
  units::Money minimum_cost;  ///< What a minimum bill adds; negative where it swallows cost.
  std::vector<units::Money> by_period;  ///< Of `cost`.
  std::vector<units::Money> by_band;    ///< Band energy at the band's price, with tax.
  /// By cause (base first, then workloads): band energies at band prices with tax plus, period by
  /// period, the share by energy of that period's blocks cost. The minimum is shared with nobody.
  std::vector<units::Money> by_cause;
  std::vector<Bill> bills;  ///< With the candidate.
};

/// Reckons the cost of energies `kwh`: rows are periods x bands (`period * bands + band`),
/// columns are causes.
CandidateCost candidate_cost(const HouseholdBills& without, const Eigen::MatrixXd& kwh);

}  // namespace wattweek::billing
