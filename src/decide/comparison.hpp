#pragma once
// Each candidate against the baseline.

#include <vector>

#include "wattweek/decide/assessment.hpp"

namespace wattweek::decide {

/// The finance figures of a study, where it has a horizon.
std::optional<Horizon> horizon_of(const model::Study& study);

/// What a candidate pays and gets, at the midpoints.
Outlay outlay_of(const model::Candidate& candidate);

/// One row for every candidate but the baseline, in file order.
/// \pre `assessment` has its candidates and the household's bills.
std::vector<ComparisonRow> compare_all(const model::Study& study, const Assessment& assessment);

}  // namespace wattweek::decide
