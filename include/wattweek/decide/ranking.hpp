#pragma once
// Which candidate is best: the one whose criterion is lowest.

#include <algorithm>
#include <cstddef>
#include <optional>
#include <utility>
#include <vector>

#include "wattweek/decide/assessment.hpp"
#include "wattweek/decide/lifetime.hpp"

namespace wattweek::decide {

/// What candidates are ranked by: the present cost over the horizon; without a horizon the study's
/// cost where all purchases are equal, and nothing where they are not.
enum class Criterion { none, cost, present_cost };

Criterion criterion_of(const model::Study& study);

/// The index of the lowest; of equal ones (within kEqual of each other) the first.
/// \pre There is at least one.
std::size_t best_of(const std::vector<double>& criteria);

/// The lowest and the lowest of the others, as `best_of` finds them; the only one twice.
/// \pre There is at least one.
std::pair<std::size_t, std::size_t> best_two_of(const std::vector<double>& criteria);

/// As the first, of so many candidates, of which `criterion(candidate)` tells the criterion.
template <typename CriterionOf>
std::size_t best_of(std::size_t candidates, const CriterionOf& criterion) {
  double lowest = criterion(0);
  for (std::size_t c = 1; c < candidates; ++c) lowest = std::min(lowest, criterion(c));
  std::size_t best = 0;
  while (best + 1 < candidates && !nearly_equal(criterion(best), lowest)) ++best;
  return best;
}

/// A candidate and what it is ranked by, in currency.
struct Ranked {
  std::size_t candidate = 0;
  double criterion = 0;
};

/// The candidates by their criterion, the best first, equal ones in the study's order; nothing
/// where there is no criterion.
std::optional<std::vector<Ranked>> ranking(const model::Study& study, const Assessment& assessment);

}  // namespace wattweek::decide
