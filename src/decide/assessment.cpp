#include "wattweek/decide/assessment.hpp"

#include <cmath>

#include "billing_periods.hpp"
#include "comparison.hpp"
#include "notes_of_study.hpp"
#include "refusals.hpp"
#include "wattweek/billing/household.hpp"
#include "wattweek/calendar/study_fold.hpp"
#include "wattweek/diag/number_text.hpp"
#include "wattweek/power/device_law.hpp"
#include "words.hpp"

namespace wattweek::decide {

namespace {

using calendar::FoldedStudy;
using diag::Diagnostic;
using energy::CandidatePlan;
using energy::Ledger;
using units::Energy;

std::vector<Energy> monthly_energy(const Ledger& ledger, std::size_t months, std::size_t bands) {
  std::vector<Energy> sums;
  for (std::size_t m = 0; m < months; ++m) {
    sums.push_back(units::kilowatt_hours(
        ledger.kwh
            .middleRows(static_cast<Eigen::Index>(m * bands), static_cast<Eigen::Index>(bands))
            .sum()));
  }
  return sums;
}

// Carries a study through the rooms.
class Assessor {
 public:
  Assessor(const model::Study& study, const calendar::ZoneRules& zone, const Progress& progress)
      : study_(study), progress_(progress), folded_(calendar::fold_study(study, zone)) {}

  std::variant<Assessment, std::vector<Diagnostic>> run() {
    fill_calendar();
    reckon_energy();
    if (problems_.empty()) reckon_household();
    if (!problems_.empty()) return problems_;
    for (std::size_t c = 0; c < ledgers_.size(); ++c) add_candidate(c);
    check_size();
    if (!problems_.empty()) return problems_;
    result_.baseline = study_.baseline;
    result_.rows = compare_all(study_, result_);
    result_.notes = notes_of_study(study_, folded_, result_);
    return std::move(result_);
  }

 private:
  const calendar::Fold& fold() const { return folded_.fold; }

  void fill_calendar() {
    result_.months = fold().months;
    result_.band_hours.assign(fold().bands, 0.0);
    for (const calendar::Month& month : fold().months) result_.days += month.days;
    result_.hours =
        static_cast<double>((fold().months.back().end - fold().months.front().begin).count()) /
        3600.0;
    for (const billing::BillingPeriod& period : billing_periods(fold())) {
      for (std::size_t b = 0; b < fold().bands; ++b) {
        result_.band_hours[b] += units::in_hours(period.band_hours[b]);
      }
    }
  }

  void reckon_energy() {
    const auto count = static_cast<double>(study_.candidates.size());
    for (std::size_t c = 0; c < study_.candidates.size(); ++c) {
      if (progress_) progress_(study_.candidates[c].name, static_cast<double>(c) / count);
      const CandidatePlan plan = energy::plan_candidate(study_, c, folded_);
      Ledger& ledger = ledgers_.emplace_back();
      const auto refused = energy::Reckoner(plan).reckon(power::central_law(study_, c), ledger);
      if (refused) problems_.push_back(too_many_outcomes(study_, c, folded_, plan, *refused));
    }
  }

  void reckon_household() {
    std::vector<Energy> own = billing::metered_household(study_.household, fold().months);
    if (study_.household.includes) {
      const Ledger& metered = ledgers_[*study_.household.includes];
      auto left = billing::without_candidate(
          std::move(own), monthly_energy(metered, fold().months.size(), fold().bands));
      if (const auto* below = std::get_if<billing::HouseholdBelowZero>(&left)) {
        problems_.push_back(below_zero(*below));
        return;
      }
      own = std::get<std::vector<Energy>>(std::move(left));
    }
    result_.without = billing::household_bills(billing::central_law(study_.tariff),
                                               billing_periods(fold()), std::move(own));
  }

  Diagnostic below_zero(const billing::HouseholdBelowZero& below) const {
    const std::string month = calendar::to_text(fold().months[below.month].month);
    return {study_.household.includes_place,
            "household.includes: in " + month + " the candidate " +
                quoted(study_.candidates[*study_.household.includes].id) + " draws " +
                diag::rounded(units::in_kilowatt_hours(below.candidate), 2) +
                " kWh, but the household was metered with " +
                diag::rounded(units::in_kilowatt_hours(below.metered), 2) +
                " kWh; expected a household that uses at least what the candidate draws"};
  }

  void add_candidate(std::size_t c) {
    CandidateResult& result = result_.candidates.emplace_back();
    result.ledger = std::move(ledgers_[c]);
    result.cost = billing::candidate_cost(result_.without, result.ledger.kwh);
    result.energy = units::kilowatt_hours(result.ledger.total_kwh());
    result.mean = result.energy / units::hours(result_.hours);
    if (study_.carbon_kg_per_kwh) {
      result.co2_kg = units::in_kilowatt_hours(result.energy) * study_.carbon_kg_per_kwh->central();
    }
    for (const energy::DeviceTotal& device : result.ledger.devices) {
      result.lower_bound = result.lower_bound || device.overload_hours > 0;
    }
    if (const auto horizon = horizon_of(study_)) {
      result.lifetime = reckon_lifetime(*horizon, outlay_of(study_.candidates[c]),
                                        units::in_currency(result.cost.cost));
    }
  }

  // Finite inputs can still be so large that their products are not.
  void check_size() {
    for (std::size_t c = 0; c < result_.candidates.size(); ++c) {
      const CandidateResult& result = result_.candidates[c];
      double all = units::in_kilowatt_hours(result.energy) + units::in_currency(result.cost.cost) +
                   result.ledger.highest_w;
      for (const energy::UnitHours& hours : result.ledger.unit_hours)
        all += hours.served + hours.unserved;
      for (const billing::Bill& bill : result.cost.bills) all += units::in_currency(bill.total);
      if (result.lifetime) all += result.lifetime->total + result.lifetime->present_cost;
      if (std::isfinite(all)) continue;
      problems_.push_back({study_.candidates[c].place,
                           "candidate " + quoted(study_.candidates[c].id) +
                               ": its figures are too large to be reckoned; expected watts, "
                               "units and prices of a household"});
    }
  }

  const model::Study& study_;
  const Progress& progress_;
  FoldedStudy folded_;
  std::vector<Ledger> ledgers_;
  Assessment result_;
  std::vector<Diagnostic> problems_;
};

}  // namespace

std::variant<Assessment, std::vector<Diagnostic>> assess(const model::Study& study,
                                                         const calendar::ZoneRules& zone,
                                                         const Progress& progress) {
  return Assessor(study, zone, progress).run();
}

}  // namespace wattweek::decide
