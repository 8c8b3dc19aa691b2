#include "wattweek/decide/week.hpp"

#include <cassert>
#include <cstdint>

#include "wattweek/calendar/study_fold.hpp"
#include "wattweek/energy/ledger.hpp"
#include "wattweek/energy/plan.hpp"
#include "wattweek/power/device_law.hpp"

namespace wattweek::decide {

namespace {

/// Entries of all months together; `of_cell` has one for each (month, slot).
Eigen::VectorXd over_months(const calendar::Fold& fold, const Eigen::VectorXd& of_cell) {
  const auto slots = static_cast<Eigen::Index>(fold.bands);
  Eigen::VectorXd sums = Eigen::VectorXd::Zero(slots);
  for (Eigen::Index cell = 0; cell < of_cell.size(); ++cell) sums(cell % slots) += of_cell(cell);
  return sums;
}

Eigen::VectorXd hours_by_slot(const calendar::Fold& fold) {
  const std::vector<std::int64_t> seconds = calendar::seconds_by_cell(fold);
  Eigen::VectorXd hours(static_cast<Eigen::Index>(seconds.size()));
  for (std::size_t cell = 0; cell < seconds.size(); ++cell) {
    hours(static_cast<Eigen::Index>(cell)) = static_cast<double>(seconds[cell]) / 3600.0;
  }
  return over_months(fold, hours);
}

Week week_of(const Eigen::VectorXd& kwh, const Eigen::VectorXd& hours) {
  Week week;
  week.mean_w.setZero(7, Week::kSlotsPerDay);
  for (Eigen::Index slot = 0; slot < hours.size(); ++slot) {
    if (hours(slot) <= 0) continue;
    week.mean_w(slot / Week::kSlotsPerDay, slot % Week::kSlotsPerDay) =
        1000.0 * kwh(slot) / hours(slot);
  }
  return week;
}

}  // namespace

std::vector<Week> weeks(const model::Study& study, const calendar::ZoneRules& zone,
                        const Progress& progress) {
  const calendar::FoldedStudy folded = calendar::fold_week(study, zone, Week::kSlotsPerDay);
  const Eigen::VectorXd hours = hours_by_slot(folded.fold);
  std::vector<Week> weeks;
  energy::Ledger ledger;
  const auto count = static_cast<double>(study.candidates.size());
  for (std::size_t c = 0; c < study.candidates.size(); ++c) {
    if (progress) progress(study.candidates[c].name, static_cast<double>(c) / count);
    const energy::CandidatePlan plan = energy::plan_candidate(study, c, folded);
    const auto refused = energy::Reckoner(plan).reckon(power::central_law(study, c), ledger);
    assert(!refused && "the study has been assessed");
    static_cast<void>(refused);
    weeks.push_back(week_of(over_months(folded.fold, ledger.kwh.rowwise().sum()), hours));
  }
  return weeks;
}

}  // namespace wattweek::decide
