#include "changed_study.hpp"

#include "comparison.hpp"
#include "refusals.hpp"
#include "wattweek/energy/plan.hpp"
#include "wattweek/power/device_law.hpp"

namespace wattweek::decide {

ChangedStudy::ChangedStudy(const model::Study& study, const calendar::ZoneRules& zone,
                           const billing::HouseholdBills& without)
    : study_(study), without_(without), folded_(calendar::fold_study(study, zone)) {}

std::variant<ChangedCandidate, diag::Diagnostic> ChangedStudy::reckon(std::size_t candidate) const {
  const energy::CandidatePlan plan = energy::plan_candidate(study_, candidate, folded_);
  ChangedCandidate result;
  const auto refused =
      energy::Reckoner(plan).reckon(power::central_law(study_, candidate), result.ledger);
  if (refused) return too_many_outcomes(study_, candidate, folded_, plan, *refused);
  result.cost = billing::candidate_cost(without_, result.ledger.kwh);
  return result;
}

std::optional<double> present_saving(const model::Study& study, double saved_a_year) {
  const auto horizon = horizon_of(study);
  if (!horizon) return std::nullopt;
  return present_value_of_yearly(*horizon) * saved_a_year;
}

}  // namespace wattweek::decide
