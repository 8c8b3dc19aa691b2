#include "wattweek/decide/rest.hpp"

#include <algorithm>

#include "changed_study.hpp"
#include "wattweek/decide/lifetime.hpp"

namespace wattweek::decide {
namespace {

RestFigures figures_of(const energy::Ledger& ledger, const billing::CandidateCost& cost) {
  RestFigures figures;
  figures.energy_kwh = ledger.total_kwh();
  figures.cost = units::in_currency(cost.cost);
  figures.unit_hours = ledger.unit_hours;
  for (const energy::State state : {energy::State::off, energy::State::sleep}) {
    figures.resting_device_hours += ledger.states[static_cast<std::size_t>(state)].device_hours;
  }
  return figures;
}

model::Study with_rest(model::Study study, const RestPlan& plan) {
  model::Rest rest;
  rest.window.hours = {plan.hours};
  rest.state = plan.state;
  for (const std::size_t device : plan.devices) {
    study.candidates[plan.candidate].devices[device].rests.push_back(rest);
  }
  return study;
}

double saved(double without, double with) {
  return nearly_equal(without, with) ? 0.0 : without - with;
}

}  // namespace

bool can_sleep(const model::Candidate& candidate, const std::vector<std::size_t>& devices) {
  return std::all_of(devices.begin(), devices.end(), [&candidate](std::size_t device) {
    return candidate.devices[device].profile->sleep.has_value();
  });
}

std::variant<RestResult, std::vector<diag::Diagnostic>> rest(const model::Study& study,
                                                             const calendar::ZoneRules& zone,
                                                             const Assessment& today,
                                                             const RestPlan& plan) {
  const model::Study changed = with_rest(study, plan);
  auto reckoned = ChangedStudy(changed, zone, today.without).reckon(plan.candidate);
  if (auto* problem = std::get_if<diag::Diagnostic>(&reckoned)) {
    return std::vector<diag::Diagnostic>{std::move(*problem)};
  }
  const auto& with = std::get<ChangedCandidate>(reckoned);
  const CandidateResult& without = today.candidates[plan.candidate];
  RestResult result;
  result.without = figures_of(without.ledger, without.cost);
  result.with = figures_of(with.ledger, with.cost);
  const double to_a_year = 12.0 / study.months;
  result.saves_kwh = saved(result.without.energy_kwh, result.with.energy_kwh) * to_a_year;
  result.saves_cost = saved(result.without.cost, result.with.cost) * to_a_year;
  result.saves_present_cost = present_saving(study, result.saves_cost);
  return result;
}

}  // namespace wattweek::decide
