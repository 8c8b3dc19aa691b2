#include "wattweek/decide/several_tariffs.hpp"

#include <algorithm>

#include "wattweek/decide/lifetime.hpp"

namespace wattweek::decide {
namespace {

double criterion_of(const UnderTariff& under, const Yardstick& yardstick, std::size_t c) {
  const CandidateResult& result = under.assessment.candidates[c];
  const double cost = units::in_currency(result.cost.cost);
  if (yardstick.is_year_alone) return cost * 12.0 / under.study.months;
  return yardstick.criterion == Criterion::present_cost ? result.lifetime->present_cost : cost;
}

TariffRow ranked(const UnderTariff& under, const Yardstick& yardstick) {
  TariffRow row;
  row.tariff = under.study.tariff.name;
  for (std::size_t c = 0; c < under.assessment.candidates.size(); ++c) {
    row.criteria.push_back(criterion_of(under, yardstick, c));
  }
  row.best = best_of(row.criteria);
  const double lowest = row.criteria[row.best];
  const auto equal = std::count_if(row.criteria.begin(), row.criteria.end(),
                                   [lowest](double each) { return nearly_equal(each, lowest); });
  row.is_shared = equal > 1;
  return row;
}

/// Names that several rows share become paths.
void tell_apart(std::vector<TariffRow>& rows, const std::vector<UnderTariff>& all) {
  const auto shares = [&all](const UnderTariff& under) {
    return std::count_if(all.begin(), all.end(), [&under](const UnderTariff& other) {
             return other.study.tariff.name == under.study.tariff.name;
           }) > 1;
  };
  for (std::size_t t = 0; t < all.size(); ++t) {
    if (shares(all[t])) rows[t].tariff = all[t].path;
  }
}

}  // namespace

Yardstick yardstick_of(const std::vector<const model::Study*>& studies) {
  const std::string& currency = studies.front()->tariff.currency;
  const bool is_one = std::all_of(
      studies.begin(), studies.end(),
      [&currency](const model::Study* study) { return study->tariff.currency == currency; });
  if (!is_one) return {Criterion::cost, true};
  return {decide::criterion_of(*studies.front()), false};
}

SeveralTariffs under_each(const std::vector<UnderTariff>& all) {
  std::vector<const model::Study*> studies;
  for (const UnderTariff& under : all) studies.push_back(&under.study);
  SeveralTariffs several{yardstick_of(studies), std::nullopt, {}};
  if (several.yardstick.criterion == Criterion::present_cost) {
    several.years = all.front().study.finance->years;
  }
  for (const UnderTariff& under : all) several.rows.push_back(ranked(under, several.yardstick));
  tell_apart(several.rows, all);
  return several;
}

}  // namespace wattweek::decide
