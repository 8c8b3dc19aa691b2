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

/// Takes the best out: the first in the study's order that is as low as the lowest.
Ranked take_best(std::vector<Ranked>& left) {
  const auto lower = [](const Ranked& a, const Ranked& b) { return a.criterion < b.criterion; };
  const double lowest = std::min_element(left.begin(), left.end(), lower)->criterion;
  const auto best = std::find_if(left.begin(), left.end(), [lowest](const Ranked& one) {
    return nearly_equal(one.criterion, lowest);
  });
  const Ranked taken = *best;
  left.erase(best);
  return taken;
}

}  // namespace

std::optional<std::vector<Ranked>> ranking(const model::Study& study,
                                           const Assessment& assessment) {
  std::vector<Ranked> left;
  for (std::size_t c = 0; c < assessment.candidates.size(); ++c) {
    const CandidateResult& result = assessment.candidates[c];
    if (!result.lifetime && !purchases_are_equal(study)) return std::nullopt;
    left.push_back({c, result.lifetime ? result.lifetime->present_cost
                                       : units::in_currency(result.cost.cost)});
  }
  std::vector<Ranked> all;
  while (!left.empty()) all.push_back(take_best(left));
  return all;
}

}  // namespace wattweek::decide
