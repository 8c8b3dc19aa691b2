#pragma once
// What there is to say about a tariff or a profile by itself, without a study.

#include <string>

#include "wattweek/calendar/tariff_walk.hpp"
#include "wattweek/decide/profile_alone.hpp"
#include "wattweek/model/profile.hpp"
#include "wattweek/model/tariff.hpp"
#include "wattweek/report/report.hpp"

namespace wattweek::report {

/// Which price holds when, as a table, and everything else on the bill in a line each.
std::string tariff_text(const model::Tariff& tariff, const calendar::TariffWalk& walk,
                        const Style& style);

/// The watts by state, what idling all year comes to at plain prices, and what uses add; of a week
/// its mean, its lowest and highest hour, and what a year of such weeks comes to. The cautions are
/// not in it: see `cautions_text`.
std::string profile_text(const model::Profile& profile, const Style& style);

/// Does `profile_text` speak of the most that the device draws?
bool speaks_of_highest_watts(const model::Profile& profile);

}  // namespace wattweek::report
