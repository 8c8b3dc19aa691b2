#pragma once
// What only reckoning shows to be more than can be reckoned.

#include "wattweek/calendar/study_fold.hpp"
#include "wattweek/diag/diagnostic.hpp"
#include "wattweek/energy/ledger.hpp"
#include "wattweek/model/study.hpp"

namespace wattweek::decide {

/// Names what the outcomes are of: the device, the first local time and the workloads in use.
diag::Diagnostic too_many_outcomes(const model::Study& study, std::size_t candidate,
                                   const calendar::FoldedStudy& folded,
                                   const energy::CandidatePlan& plan,
                                   const energy::TooManyOutcomes& refused);

}  // namespace wattweek::decide
