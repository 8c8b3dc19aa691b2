#pragma once
// Tables of all candidates, rounded as people say numbers.

#include "page_parts.hpp"
#include "shown.hpp"

namespace wattweek::report {

/// Energy, watts, cost, purchase, present cost and CO2 of each, with ranges where somebody drew.
NamedTable spoken_candidates(const Shown& s);

/// In how many trials each one is the cheapest. \pre There are draws and a ranking.
NamedTable cheapest(const Shown& s);

/// The devices of all candidates.
NamedTable all_devices(const Shown& s);

}  // namespace wattweek::report
