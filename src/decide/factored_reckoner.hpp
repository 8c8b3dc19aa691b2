#pragma once
// A study under any values of the factors; reckons anew only what these change.

#include <cstdint>
#include <memory>
#include <optional>
#include <vector>

#include "factored_study.hpp"
#include "wattweek/billing/charges.hpp"
#include "wattweek/decide/lifetime.hpp"
#include "wattweek/decide/ranking.hpp"
#include "wattweek/decide/scenario.hpp"
#include "wattweek/power/device_law.hpp"

namespace wattweek::decide {

/// What no factor changes, to be shared among threads.
struct FactoredBase {
  FactoredBase(const model::Study& of, const calendar::ZoneRules& zone);

  const model::Study& study;
  ScenarioPlan plan;
  Criterion criterion;
  billing::TariffLaw law;
  std::vector<units::Energy> household;    ///< By month, without what `includes` names.
  std::optional<ScenarioRefused> refused;  ///< Why the household is not known.
  std::optional<Horizon> horizon;
  double yearly_factor = 0;          ///< Present value of 1 a year; 0 without a horizon.
  std::vector<double> purchase;      ///< By candidate.
  std::vector<double> other_outlay;  ///< Later costs less resale, at present value.

  /// What the year's cost makes of it over the horizon; 0 without one.
  double present_cost(const FactorValues& values, std::size_t candidate, double cost) const;
  double criterion_of(const Totals& totals) const;
};

/// One for each thread.
class FactoredReckoner {
 public:
  /// `base` must outlive it.
  explicit FactoredReckoner(const FactoredBase& base);

  /// Energy, and the charge of each month, of one candidate under the factors.
  [[nodiscard]] std::optional<ScenarioRefused> reckon_charges(const FactorValues& values,
                                                              std::size_t candidate);
  double energy_kwh(std::size_t candidate) const { return kwh_[candidate].sum(); }
  /// Of each month, with the candidate and without any.
  const std::vector<double>& charges_with(std::size_t candidate) const { return with_[candidate]; }
  const std::vector<billing::Charges>& charges() const { return charges_.charges(); }

  /// Everything.
  [[nodiscard]] std::optional<ScenarioRefused> reckon(const FactorValues& values,
                                                      std::vector<Totals>& totals);

 private:
  void settle_household(double factor);
  void settle_shares(const FactorValues& values);
  [[nodiscard]] std::optional<ScenarioRefused> reckon_energy(double idle, std::size_t candidate);

  const FactoredBase& base_;
  FactoredStudy factored_;
  std::vector<std::unique_ptr<energy::Reckoner>> reckoners_;
  billing::ChargeReckoner charges_;
  std::vector<units::Energy> household_;
  std::optional<double> household_factor_;
  std::vector<Eigen::VectorXd> kwh_;
  /// What `kwh_` of a candidate is of.
  struct Known {
    std::uint64_t shares = 0;    // Number of `shares_`; 0: none.
    std::optional<double> idle;  // Factor that `law` has; nothing: there is no law.
    power::CandidateLaw law;
  };
  std::vector<Known> known_;  // By candidate.
  double use_ = 1;            // The factors that the shares are of.
  std::vector<double> use_of_;
  std::vector<double> shares_;  // Both ends of all.
  std::vector<double> wanted_;
  std::uint64_t shares_number_ = 0;  // So many times they changed.
  std::vector<std::vector<double>> with_;
};

}  // namespace wattweek::decide
