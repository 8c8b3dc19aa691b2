#include "wattweek/decide/payback_target.hpp"

#include "comparison.hpp"

namespace wattweek::decide {

PaybackTargets payback_targets(const model::Study& study, const Assessment& assessment,
                               int within_years) {
  PaybackTargets targets{within_years, {}};
  const Outlay baseline = outlay_of(study.candidates[assessment.baseline]);
  const auto horizon = horizon_of(study);
  for (const ComparisonRow& row : assessment.rows) {
    PaybackTarget& target = targets.rows.emplace_back();
    target.candidate = row.candidate;
    target.purchase = baseline.purchase + within_years * row.saves_cost;
    if (!horizon || within_years > horizon->years) continue;
    const Outlay outlay = outlay_of(study.candidates[row.candidate]);
    target.discounted_purchase =
        baseline.purchase + extra_purchase_earned_back(*horizon, within_years, row.saves_cost,
                                                       outlay.later, baseline.later);
  }
  return targets;
}

}  // namespace wattweek::decide
