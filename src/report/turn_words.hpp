#pragma once

#include <string>

#include "wattweek/report/what_if.hpp"

namespace wattweek::report {

/// With the name that `--vary` takes, or for people who will never type it.
enum class FactorNames { told, untold };

/// `prices per kWh (price): below 0.936 times today's - 0.1633 EUR, tax included - it is Refitted
/// office tower.` \pre The best changes below or above.
std::string turn_sentence(const WhatIfShown& shown, const decide::Turns& turns, FactorNames names);

}  // namespace wattweek::report
