#include "wattweek/decide/scenario.hpp"

#include <algorithm>

#include "billing_periods.hpp"
#include "comparison.hpp"
#include "wattweek/billing/charges.hpp"
#include "wattweek/billing/household.hpp"
#include "wattweek/decide/lifetime.hpp"
#include "wattweek/power/device_law.hpp"

namespace wattweek::decide {

namespace {

using units::Energy;

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
  explicit Inside(const ScenarioPlan& plan) : plan_(plan), charges_(plan.periods) {
    for (const energy::CandidatePlan& candidate : plan.candidates) {
      reckoners_.push_back(std::make_unique<energy::Reckoner>(candidate));
    }
    kwh_.resize(plan.candidates.size());
  }

  std::optional<ScenarioRefused> reckon(const model::Study& study, std::vector<Totals>& totals) {
    for (std::size_t c = 0; c < reckoners_.size(); ++c) {
      const auto refused = reckoners_[c]->reckon_energy(power::central_law(study, c), kwh_[c]);
      if (refused) return ScenarioRefused{c, *refused};
    }
    find_household(study);
    law_ = billing::central_law(study.tariff);
    charges_.settle(law_, household_);
    const auto horizon = horizon_of(study);
    totals.resize(kwh_.size());
    for (std::size_t c = 0; c < kwh_.size(); ++c) {
      totals[c].energy_kwh = kwh_[c].sum();
      charges_.charge_with(kwh_[c], with_);
      totals[c].cost = charges_.cost(with_, 1);
      totals[c].present_cost =
          horizon ? reckon_lifetime(*horizon, outlay_of(study.candidates[c]), totals[c].cost)
                        .present_cost
                  : 0;
    }
    return std::nullopt;
  }

  std::uint64_t outcomes_formed() const {
    std::uint64_t sum = 0;
    for (const auto& reckoner : reckoners_) sum += reckoner->outcomes_formed();
    return sum;
  }

 private:
  void find_household(const model::Study& study) {
    const std::vector<calendar::Month>& months = plan_.folded.fold.months;
    household_ = billing::metered_household(study.household, months);
    if (!study.household.includes) return;
    household_ =
        billing::without_drawn_candidate(std::move(household_), kwh_[*study.household.includes]);
  }

  const ScenarioPlan& plan_;
  std::vector<std::unique_ptr<energy::Reckoner>> reckoners_;
  billing::ChargeReckoner charges_;
  billing::TariffLaw law_;
  std::vector<Energy> household_;
  std::vector<Eigen::VectorXd> kwh_;
  std::vector<double> with_;
};

ScenarioReckoner::ScenarioReckoner(const ScenarioPlan& plan)
    : inside_(std::make_unique<Inside>(plan)) {}
ScenarioReckoner::~ScenarioReckoner() = default;

std::uint64_t ScenarioReckoner::outcomes_formed() const { return inside_->outcomes_formed(); }

std::optional<ScenarioRefused> ScenarioReckoner::reckon(const model::Study& study,
                                                        std::vector<Totals>& totals) {
  return inside_->reckon(study, totals);
}

}  // namespace wattweek::decide
