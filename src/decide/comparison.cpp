#include "comparison.hpp"

#include "wattweek/decide/break_even.hpp"

namespace wattweek::decide {

using units::in_currency;

namespace {

double difference(double a, double b) { return nearly_equal(a, b) ? 0.0 : a - b; }

// One candidate and the baseline, side by side.
class Pair {
 public:
  Pair(const model::Study& study, const Assessment& assessment, std::size_t candidate)
      : study_(study),
        assessment_(assessment),
        candidate_(assessment.candidates[candidate]),
        baseline_(assessment.candidates[assessment.baseline]),
        outlay_(outlay_of(study.candidates[candidate])),
        baseline_outlay_(outlay_of(study.candidates[assessment.baseline])) {
    row_.candidate = candidate;
  }

  ComparisonRow row() {
    const double years = static_cast<double>(study_.months) / 12;
    const double cost = in_currency(candidate_.cost.cost) / years;
    const double baseline_cost = in_currency(baseline_.cost.cost) / years;
    row_.saves_kwh = units::in_kilowatt_hours(baseline_.energy - candidate_.energy) / years;
    row_.saves_cost = baseline_cost - cost;
    row_.extra_purchase = difference(outlay_.purchase, baseline_outlay_.purchase);
    const Trade trade{row_.extra_purchase, difference(baseline_cost, cost)};
    row_.payback_years = payback_years(trade);
    row_.overtaken_years = overtaken_years(trade);
    if (const auto horizon = horizon_of(study_)) add_horizon(*horizon, trade);
    return row_;
  }

 private:
  void add_horizon(const Horizon& horizon, const Trade& trade) {
    row_.discounted_payback_years =
        discounted_payback_years(horizon, trade, outlay_.later, baseline_outlay_.later);
    row_.saves_present_cost = baseline_.lifetime->present_cost - candidate_.lifetime->present_cost;
    row_.break_even_price_factor = break_even_price_factor(break_even_input(horizon));
  }

  BreakEvenInput break_even_input(const Horizon& horizon) const {
    BreakEvenInput input;
    const billing::TariffLaw& law = assessment_.without.law;
    input.tax = law.tax;
    input.yearly_factor = present_value_of_yearly(horizon);
    input.fixed_candidate = reckon_lifetime(horizon, outlay_, 0).present_cost;
    input.fixed_baseline = reckon_lifetime(horizon, baseline_outlay_, 0).present_cost;
    for (std::size_t m = 0; m < assessment_.months.size(); ++m) {
      const billing::Bill& with = candidate_.cost.bills[m];
      const billing::Bill& with_baseline = baseline_.cost.bills[m];
      MonthlyCharges month{in_currency(with.standing), {}, charge(with), charge(with_baseline)};
      if (law.minimum_per_month) month.minimum = in_currency(*law.minimum_per_month);
      input.months.push_back(month);
    }
    return input;
  }

  static double charge(const billing::Bill& bill) {
    units::Money sum = bill.blocks;
    for (const billing::BandLine& line : bill.bands) sum += line.amount;
    return in_currency(sum);
  }

  const model::Study& study_;
  const Assessment& assessment_;
  const CandidateResult& candidate_;
  const CandidateResult& baseline_;
  Outlay outlay_;
  Outlay baseline_outlay_;
  ComparisonRow row_;
};

}  // namespace

std::optional<Horizon> horizon_of(const model::Study& study) {
  if (!study.finance || !study.finance->years) return std::nullopt;
  return Horizon{*study.finance->years, study.finance->discount_rate.central(),
                 study.finance->price_rise.central()};
}

Outlay outlay_of(const model::Candidate& candidate) {
  Outlay outlay{
      in_currency(candidate.purchase.central()), in_currency(candidate.resale.central()), {}};
  for (const model::LaterCost& later : candidate.later) {
    outlay.later.push_back({later.year, in_currency(later.cost.central())});
  }
  return outlay;
}

std::vector<ComparisonRow> compare_all(const model::Study& study, const Assessment& assessment) {
  std::vector<ComparisonRow> rows;
  for (std::size_t c = 0; c < assessment.candidates.size(); ++c) {
    if (c != assessment.baseline) rows.push_back(Pair(study, assessment, c).row());
  }
  return rows;
}

}  // namespace wattweek::decide
