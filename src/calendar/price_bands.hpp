#pragma once
// A tariff's bands as the fold asks for them.

#include <vector>

#include "wattweek/calendar/fold.hpp"

namespace wattweek::calendar {

/// Points into the tariff. Its holidays count as it says.
std::vector<Condition> bands_of(const model::Tariff& tariff);

}  // namespace wattweek::calendar
