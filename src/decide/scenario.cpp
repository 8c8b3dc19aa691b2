#include "wattweek/decide/scenario.hpp"

#include <algorithm>
#include <numeric>

#include "billing_periods.hpp"
#include "comparison.hpp"
#include "wattweek/billing/charges.hpp"
#include "wattweek/billing/household.hpp"
#include "wattweek/decide/lifetime.hpp"
#include "wattweek/power/device_law.hpp"

namespace wattweek::decide {

namespace {

using units::Energy;

std::vector<std::size_t> all_of(const ScenarioPlan& plan) {
  std::vector<std::size_t> all(plan.candidates.size());
  std::iota(all.begin(), all.end(), std::size_t{0});
  return all;
}

}  // namespace

ScenarioPlan plan_scenarios(const model::Study& study, const calendar::ZoneRules& zone) {
  ScenarioPlan plan{calendar::fold_study(study, zone), {}, {}};
  plan.periods = billing_periods(plan.folded.fold);
  for (std::size_t c = 0; c < study.candidates.size(); ++c) {
    plan.candidates.push_back(energy::plan_candidate(study, c, plan.folded));
  }
  return plan;
}

class ScenarioReckoner::Inside {
 public:
  Inside(const ScenarioPlan& plan, std::vector<std::size_t> candidates)
      : plan_(plan), candidates_(std::move(candidates)), charges_(plan.periods) {
    for (const energy::CandidatePlan& candidate : plan.candidates) {
      reckoners_.push_back(std::make_unique<energy::Reckoner>(candidate));
    }
    kwh_.resize(plan.candidates.size());
    with_.resize(plan.candidates.size());
    paid_besides_.resize(plan.candidates.size());
  }

  std::optional<ScenarioRefused> reckon(const model::Study& study, std::vector<Totals>& totals) {
    for (const std::size_t c : candidates_) {
      if (auto refused = reckon_energy(study, c)) return refused;
    }
    if (auto refused = find_household(study)) return refused;
    law_ = billing::central_law(study.tariff);
    charges_.settle(law_, household_);
    const auto horizon = horizon_of(study);
    yearly_factor_ = horizon ? present_value_of_yearly(*horizon) : 0;
    totals.assign(kwh_.size(), {});
    for (const std::size_t c : candidates_) {
      charges_.charge_with(kwh_[c], with_[c]);
      totals[c] = {kwh_[c].sum(), charges_.cost(with_[c], 1), 0};
      if (!horizon) continue;
      const Outlay outlay = outlay_of(study.candidates[c]);
      totals[c].present_cost = reckon_lifetime(*horizon, outlay, totals[c].cost).present_cost;
      paid_besides_[c] = reckon_lifetime(*horizon, outlay, 0).present_cost;
    }
    return std::nullopt;
  }

  Totals at_prices(double factor, std::size_t candidate) const {
    const double cost = charges_.cost(with_[candidate], factor);
    return {kwh_[candidate].sum(), cost, paid_besides_[candidate] + yearly_factor_ * cost};
  }

  std::uint64_t outcomes_formed() const {
    std::uint64_t sum = 0;
    for (const auto& reckoner : reckoners_) sum += reckoner->outcomes_formed();
    return sum;
  }

 private:
  std::optional<ScenarioRefused> reckon_energy(const model::Study& study, std::size_t candidate) {
    const auto refused =
        reckoners_[candidate]->reckon_energy(power::central_law(study, candidate), kwh_[candidate]);
    if (refused) return ScenarioRefused{candidate, *refused};
    return std::nullopt;
  }

  std::optional<ScenarioRefused> find_household(const model::Study& study) {
    household_ = billing::metered_household(study.household, plan_.folded.fold.months);
    if (!study.household.includes) return std::nullopt;
    const std::size_t metered = *study.household.includes;
    if (std::find(candidates_.begin(), candidates_.end(), metered) == candidates_.end()) {
      if (auto refused = reckon_energy(study, metered)) return refused;
    }
    household_ = billing::without_drawn_candidate(std::move(household_), kwh_[metered]);
    return std::nullopt;
  }

  const ScenarioPlan& plan_;
  std::vector<std::size_t> candidates_;  // Those that are reckoned.
  std::vector<std::unique_ptr<energy::Reckoner>> reckoners_;
  billing::ChargeReckoner charges_;
  billing::TariffLaw law_;
  std::vector<Energy> household_;
  std::vector<Eigen::VectorXd> kwh_;
  std::vector<std::vector<double>> with_;  // By candidate.
  std::vector<double> paid_besides_;       // By candidate: at present value, without electricity.
  double yearly_factor_ = 0;               // Present value of 1 a year; 0 without a horizon.
};

ScenarioReckoner::ScenarioReckoner(const ScenarioPlan& plan)
    : ScenarioReckoner(plan, all_of(plan)) {}
ScenarioReckoner::ScenarioReckoner(const ScenarioPlan& plan, std::vector<std::size_t> candidates)
    : inside_(std::make_unique<Inside>(plan, std::move(candidates))) {}
ScenarioReckoner::~ScenarioReckoner() = default;

std::uint64_t ScenarioReckoner::outcomes_formed() const { return inside_->outcomes_formed(); }

Totals ScenarioReckoner::at_prices(double factor, std::size_t candidate) const {
  return inside_->at_prices(factor, candidate);
}

std::optional<ScenarioRefused> ScenarioReckoner::reckon(const model::Study& study,
                                                        std::vector<Totals>& totals) {
  return inside_->reckon(study, totals);
}

}  // namespace wattweek::decide
