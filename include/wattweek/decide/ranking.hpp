#pragma once
// Which candidate is best: the one whose criterion is lowest.

#include <cstddef>
#include <optional>
#include <vector>

#include "wattweek/decide/assessment.hpp"

namespace wattweek::decide {

/// A candidate and what it is ranked by, in currency.
struct Ranked {
  std::size_t candidate = 0;
  double criterion = 0;
};

/// The candidates by their criterion, the best first; equal ones (within kEqual of each other)
/// in the study's order. The criterion is the present cost over the horizon. Without a horizon it
/// is the study's cost where all purchases are equal; where they are not, there is no ranking.
std::optional<std::vector<Ranked>> ranking(const model::Study& study, const Assessment& assessment);

}  // namespace wattweek::decide
