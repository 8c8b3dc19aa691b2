#pragma once
// The parts of the report on a study, in the order of the reader's questions.

#include <vector>

#include "document.hpp"
#include "shown.hpp"

namespace wattweek::report {

/// The candidates side by side.
Section overview(const Shown& shown, Scope scope);

/// Where a candidate's energy and cost go; the parts add up to the whole.
Section whereabouts(const Shown& shown, std::size_t candidate);

/// By price band and month, and the picture of the week; without `weeks` no pictures.
Section timing(const Shown& shown, const std::vector<decide::Week>& weeks);

/// What one watt all year and the next kWh cost.
Section margins(const Shown& shown);

}  // namespace wattweek::report
