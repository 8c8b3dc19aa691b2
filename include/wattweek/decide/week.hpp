#pragma once
// The week as a machine lives it: mean watts by the local clock.

#include <Eigen/Core>
#include <vector>

#include "wattweek/calendar/zone.hpp"
#include "wattweek/decide/progress.hpp"
#include "wattweek/model/study.hpp"

namespace wattweek::decide {

/// Mean watts of all of a candidate's devices, over all the weeks of the study: a row for each
/// weekday, Monday first, a column for each half-hour of the day. Hours that a clock change skips
/// or repeats count for as long as they last; a half-hour that never occurs has 0.
struct Week {
  static constexpr int kSlotsPerDay = 48;
  Eigen::MatrixXd mean_w;
};

/// The weeks of all candidates, in the study's order. Each date is its own weekday, holidays too.
/// \pre `assess` has accepted the study.
std::vector<Week> weeks(const model::Study& study, const calendar::ZoneRules& zone,
                        const Progress& progress = {});

}  // namespace wattweek::decide
