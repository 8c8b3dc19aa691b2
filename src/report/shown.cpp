#include "shown.hpp"

#include <fmt/format.h>

namespace wattweek::report {

Shown shown(const model::Study& study, const decide::Assessment& assessment) {
  std::vector<double> kwh;
  std::vector<double> watts;
  for (const decide::CandidateResult& result : assessment.candidates) {
    kwh.push_back(units::in_kilowatt_hours(result.energy));
    watts.push_back(units::in_watts(result.mean));
  }
  return {study, assessment, decimals_for(kwh), decimals_for(watts)};
}

std::string joined(const std::vector<std::string>& parts) {
  return fmt::format("{}", fmt::join(parts, ", "));
}

}  // namespace wattweek::report
