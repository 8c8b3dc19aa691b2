#pragma once
// A study with other windows, paid by the household as it is today.

#include <optional>
#include <variant>

#include "wattweek/billing/cost.hpp"
#include "wattweek/calendar/study_fold.hpp"
#include "wattweek/decide/assessment.hpp"
#include "wattweek/energy/ledger.hpp"

namespace wattweek::decide {

struct ChangedCandidate {
  energy::Ledger ledger;
  billing::CandidateCost cost;
};

/// Months and bands are those of the study that was changed.
class ChangedStudy {
 public:
  /// All three must outlive it.
  ChangedStudy(const model::Study& study, const calendar::ZoneRules& zone,
               const billing::HouseholdBills& without);

  std::variant<ChangedCandidate, diag::Diagnostic> reckon(std::size_t candidate) const;

 private:
  const model::Study& study_;
  const billing::HouseholdBills& without_;
  calendar::FoldedStudy folded_;
};

/// The present cost of an amount that is saved every year of the horizon; nothing without one.
std::optional<double> present_saving(const model::Study& study, double saved_a_year);

}  // namespace wattweek::decide
