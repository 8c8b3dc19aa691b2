#pragma once
// What many bills have in common, reckoned once: the totals alone, for thousands of scenarios.

#include <Eigen/Core>
#include <optional>
#include <vector>

#include "wattweek/billing/bill.hpp"

namespace wattweek::billing {

/// One period's bill as a function of a factor x on all band and block prices:
///
///     bill(x) = max(minimum, standing + x charge) (1 + tax)
///
/// with charge what bands and blocks come to at x = 1. Amounts in currency, before tax.
struct Charges {
  double standing = 0;
  double without = 0;  ///< Charge of the household alone.
};

/// Reckons charges under one settled contract and household after the other.
class ChargeReckoner {
 public:
  /// `periods` must outlive the reckoner.
  explicit ChargeReckoner(const std::vector<BillingPeriod>& periods);

  /// The contract, and the household's own energy by period, that hold from now on.
  /// Both must outlive their use.
  void settle(const TariffLaw& law, const std::vector<units::Energy>& household);

  /// By period.
  const std::vector<Charges>& charges() const { return charges_; }

  /// The charge of each period with a candidate that draws `kwh`, by cell (period * bands + band).
  void charge_with(const Eigen::VectorXd& kwh, std::vector<double>& with) const;

  /// What the candidate adds to the bills of all periods at a price factor: the total of
  /// `candidate_cost`, but for the order in which it is added up.
  double cost(const std::vector<double>& with, double price_factor) const;

 private:
  double charge(std::size_t period, const double* extra_kwh) const;

  const std::vector<BillingPeriod>& periods_;
  std::vector<double> share_of_band_;  // Of a period's hours, by cell.
  const TariffLaw* law_ = nullptr;
  const std::vector<units::Energy>* household_ = nullptr;
  std::vector<Charges> charges_;
};

}  // namespace wattweek::billing
