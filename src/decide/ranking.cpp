#include "wattweek/decide/ranking.hpp"

#include <algorithm>

#include "wattweek/decide/lifetime.hpp"

namespace wattweek::decide {
namespace {

bool purchases_are_equal(const model::Study& study) {
  const auto purchase = [&study](std::size_t c) {
    return units::in_currency(study.candidates[c].purchase.central());
  };
  for (std::size_t c = 1; c < study.candidates.size(); ++c) {
    if (!nearly_equal(purchase(0), purchase(c))) return false;
  }
  return true;
}

}  // namespace

Criterion criterion_of(const model::Study& study) {
  if (study.finance && study.finance->years) return Criterion::present_cost;
  return purchases_are_equal(study) ? Criterion::cost : Criterion::none;
}

std::size_t best_of(const std::vector<double>& criteria) {
  return best_of(criteria.size(), [&criteria](std::size_t c) { return criteria[c]; });
}

std::pair<std::size_t, std::size_t> best_two_of(const std::vector<double>& criteria) {
  const std::size_t best = best_of(criteria);
  if (criteria.size() == 1) return {best, best};
  std::vector<double> others = criteria;
  others.erase(others.begin() + static_cast<std::ptrdiff_t>(best));
  const std::size_t second = best_of(others);
  return {best, second < best ? second : second + 1};
}

std::optional<std::vector<Ranked>> ranking(const model::Study& study,
                                           const Assessment& assessment) {
  const bool has_horizon = assessment.candidates.front().lifetime.has_value();
  if (!has_horizon && !purchases_are_equal(study)) return std::nullopt;
  std::vector<std::size_t> left;
  std::vector<double> criteria;
  for (std::size_t c = 0; c < assessment.candidates.size(); ++c) {
    const CandidateResult& result = assessment.candidates[c];
    left.push_back(c);
    criteria.push_back(has_horizon ? result.lifetime->present_cost
                                   : units::in_currency(result.cost.cost));
  }
  std::vector<Ranked> all;
  while (!left.empty()) {
    const auto best = static_cast<std::ptrdiff_t>(best_of(criteria));
    all.push_back({left[static_cast<std::size_t>(best)], criteria[static_cast<std::size_t>(best)]});
    left.erase(left.begin() + best);
    criteria.erase(criteria.begin() + best);
  }
  return all;
}

}  // namespace wattweek::decide
