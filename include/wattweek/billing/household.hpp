#pragma once
// What the home uses in each month without any of the candidates.

#include <Eigen/Core>
#include <variant>
#include <vector>

#include "wattweek/calendar/zone.hpp"
#include "wattweek/model/study.hpp"

namespace wattweek::billing {

/// A month in which the candidate that was metered with the household drew more than the
/// whole household is said to have used.
struct HouseholdBelowZero {
  std::size_t month = 0;
  units::Energy metered;
  units::Energy candidate;
};

/// kWh of each month as the user gave them: month by month, or the year's energy times the days
/// of the month over the days of its calendar year.
std::vector<units::Energy> metered_household(const model::Household& household,
                                             const std::vector<calendar::Month>& months);

/// Takes the metered candidate's own energy off, month by month; what is left between
/// -1e-9 kWh and 0 is 0.
std::variant<std::vector<units::Energy>, HouseholdBelowZero> without_candidate(
    std::vector<units::Energy> metered, const std::vector<units::Energy>& candidate);

/// The same where figures are drawn: what would fall below 0 is 0. `candidate_kwh` is by cell
/// (month * bands + band).
std::vector<units::Energy> without_drawn_candidate(std::vector<units::Energy> metered,
                                                   const Eigen::VectorXd& candidate_kwh);

}  // namespace wattweek::billing
