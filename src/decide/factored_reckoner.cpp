#include "factored_reckoner.hpp"

#include <algorithm>

#include "comparison.hpp"
#include "wattweek/billing/household.hpp"
#include "wattweek/power/device_law.hpp"

namespace wattweek::decide {

namespace {

using units::Energy;

// The household as the study is written: factors do not change what is taken off.
std::optional<ScenarioRefused> take_metered_off(const model::Study& study, const ScenarioPlan& plan,
                                                std::vector<Energy>& household) {
  if (!study.household.includes) return std::nullopt;
  const std::size_t metered = *study.household.includes;
  Eigen::VectorXd kwh;
  const auto refused = energy::Reckoner(plan.candidates[metered])
                           .reckon_energy(power::central_law(study, metered), kwh);
  if (refused) return ScenarioRefused{metered, *refused};
  household = billing::without_drawn_candidate(std::move(household), kwh);
  return std::nullopt;
}

}  // namespace

FactoredBase::FactoredBase(const model::Study& of, const calendar::ZoneRules& zone)
    : study(of),
      plan(plan_scenarios(of, zone)),
      criterion(decide::criterion_of(of)),
      law(billing::central_law(of.tariff)),
      household(billing::metered_household(of.household, plan.folded.fold.months)),
      refused(take_metered_off(of, plan, household)),
      horizon(horizon_of(of)) {
  if (horizon) yearly_factor = present_value_of_yearly(*horizon);
  for (const model::Candidate& candidate : of.candidates) {
    Outlay outlay = outlay_of(candidate);
    purchase.push_back(outlay.purchase);
    outlay.purchase = 0;
    other_outlay.push_back(horizon ? reckon_lifetime(*horizon, outlay, 0).present_cost : 0);
  }
}

double FactoredBase::present_cost(const FactorValues& values, std::size_t candidate,
                                  double cost) const {
  if (!horizon) return 0;
  return purchase[candidate] * values.purchase * values.purchase_of[candidate] +
         yearly_factor * cost + other_outlay[candidate];
}

double FactoredBase::criterion_of(const Totals& totals) const {
  return criterion == Criterion::present_cost ? totals.present_cost : totals.cost;
}

FactoredReckoner::FactoredReckoner(const FactoredBase& base)
    : base_(base),
      factored_(base.study),
      charges_(base.plan.periods),
      kwh_(base.study.candidates.size()),
      known_(base.study.candidates.size()),
      with_(base.study.candidates.size()) {
  for (const energy::CandidatePlan& plan : base.plan.candidates) {
    reckoners_.push_back(std::make_unique<energy::Reckoner>(plan));
  }
}

void FactoredReckoner::settle_household(double factor) {
  if (household_factor_ == factor) return;
  household_factor_ = factor;
  household_ = base_.household;
  for (Energy& energy : household_) energy = energy * factor;
  charges_.settle(base_.law, household_);
}

// Factors that press every share to 1 all come to the same.
void FactoredReckoner::settle_shares(const FactorValues& values) {
  if (shares_number_ > 0 && use_ == values.use && use_of_ == values.use_of) return;
  use_ = values.use;
  use_of_ = values.use_of;
  factored_.set_shares(values);
  wanted_.clear();
  factored_.append_shares(wanted_);
  if (shares_number_ > 0 && wanted_ == shares_) return;
  shares_.swap(wanted_);
  ++shares_number_;
}

std::optional<ScenarioRefused> FactoredReckoner::reckon_energy(double idle, std::size_t candidate) {
  Known& known = known_[candidate];
  if (known.idle == idle && known.shares == shares_number_) return std::nullopt;
  const bool is_new = known.idle != idle;
  if (is_new) {
    factored_.set_idle(candidate, idle);
    known.law = power::central_law(factored_.study(), candidate);
  } else {
    power::settle_uses(factored_.study(), known.law);
  }
  const auto refused = reckoners_[candidate]->reckon_energy(
      known.law, kwh_[candidate],
      is_new ? energy::Devices::may_differ : energy::Devices::as_before);
  known.idle = idle;
  known.shares = refused ? 0 : shares_number_;
  if (refused) return ScenarioRefused{candidate, *refused};
  return std::nullopt;
}

std::optional<ScenarioRefused> FactoredReckoner::reckon_charges(const FactorValues& values,
                                                                std::size_t candidate) {
  settle_shares(values);
  if (auto refused = reckon_energy(values.idle_of[candidate], candidate)) return refused;
  settle_household(values.household);
  charges_.charge_with(kwh_[candidate], with_[candidate]);
  return std::nullopt;
}

std::optional<ScenarioRefused> FactoredReckoner::reckon(const FactorValues& values,
                                                        std::vector<Totals>& totals) {
  totals.resize(kwh_.size());
  for (std::size_t c = 0; c < totals.size(); ++c) {
    if (const auto refused = reckon_charges(values, c)) return refused;
    totals[c].energy_kwh = energy_kwh(c);
    totals[c].cost = charges_.cost(with_[c], values.price);
    totals[c].present_cost = base_.present_cost(values, c, totals[c].cost);
  }
  return std::nullopt;
}

}  // namespace wattweek::decide
