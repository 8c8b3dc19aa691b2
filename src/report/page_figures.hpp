#pragma once
// The pictures of a report, each with what it shows in words and its numbers.

#include <vector>

#include "page_parts.hpp"
#include "shown.hpp"
#include "wattweek/report/page.hpp"

namespace wattweek::report {

/// The candidates' cost of the study, with its range where somebody drew.
Figure cost_figure(const Shown& s);

/// The candidates' present cost over the horizon. \pre There is a horizon.
Figure present_cost_figure(const Shown& s);

/// A candidate's mean watts by the clock of the week.
Figure week_figure(const Shown& s, const decide::Week& week, std::size_t candidate);

/// What of a candidate's energy goes where, the most first.
Figure where_figure(const Shown& s, std::size_t candidate);

/// A candidate's energy by month and price band.
Figure months_figure(const Shown& s, std::size_t candidate);

/// How many hours each candidate draws at least so much. \pre Some candidate has a load duration.
Figure load_figure(const Shown& s, const std::vector<decide::LoadDuration>& loads);

/// What each candidate costs at other levels of electricity prices.
Figure prices_figure(const Shown& s, const decide::PriceSweep& sweep);

/// What the second best costs more than the best at other levels of prices. \pre There are two.
Figure lead_figure(const Shown& s, const decide::PriceSweep& sweep);

/// Which ranges hold the doubt. \pre There is a driver.
Figure drivers_figure(const Shown& s);

/// What the draws came to for a candidate; null where nobody drew.
const decide::CandidateDoubt* doubt_of(const Shown& s, std::size_t candidate);

/// `a year`, `in 3 months`.
std::string over_the_study(const Shown& s);

/// `a year`, `over 6 years, at present value`: what candidates are ranked by.
std::string over_the_horizon(const Shown& s);

}  // namespace wattweek::report
