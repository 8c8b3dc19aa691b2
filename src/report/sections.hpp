#pragma once
// The parts of the report on a study, in the order of the reader's questions.

#include <string>
#include <vector>

#include "document.hpp"
#include "shown.hpp"

namespace wattweek::report {

/// The days and hours of the study, and its time zone.
std::string period(const Shown& shown);

/// The candidates side by side.
Section overview(const Shown& shown, Scope scope);

/// What the ranges of the files leave open, and which of them matters most.
/// \pre The assessment has its uncertainty.
Section doubt(const Shown& shown);

/// What a candidate's base and each of its workloads draw and cost, and both together.
Table parts_table(const Shown& shown, std::size_t candidate);

/// What each of a candidate's devices draws.
Table devices_table(const Shown& shown, std::size_t candidate);

/// The hours of a candidate's devices by state, and its highest draw.
std::string hours_sentence(const Shown& shown, std::size_t candidate);

/// Where a candidate's energy and cost go; the parts add up to the whole.
Section whereabouts(const Shown& shown, std::size_t candidate);

/// Where straight lines would mislead about the doubt, a sentence each. \pre As `doubt`.
std::vector<std::string> bends(const Shown& shown);

/// By price band and month, and the picture of the week; without `weeks` no pictures.
Section timing(const Shown& shown, const std::vector<decide::Week>& weeks);

/// What one watt all year and the next kWh cost.
Section margins(const Shown& shown);

}  // namespace wattweek::report
