#pragma once
// Results made by hand: two candidates, a night and a day band, one workload, two months. The
// figures need not follow from each other; each is there to be found again.

#include "wattweek/report/report.hpp"

namespace wattweek::report {

model::Candidate candidate(const std::string& id, const std::string& name, double purchase);

model::Study study();

billing::Bill bill(double kwh);

/// Draws `base` and `film` kWh in each of the two bands of each of the two months.
decide::CandidateResult result(double base, double film, double cost);

decide::Assessment assessment();

decide::Note note(const std::string& code, const std::string& where, const std::string& text);

decide::Note placed_note(const std::string& code, const std::string& text);

/// `assessment` over a horizon of five years.
decide::Assessment with_horizon();

}  // namespace wattweek::report
