#pragma once
// What a contract says besides the prices of its bands, a sentence each.

#include <string>
#include <vector>

#include "wattweek/model/tariff.hpp"

namespace wattweek::report {

/// Blocks by season, standing charge, minimum, tax and holidays.
std::vector<std::string> terms(const model::Tariff& tariff);

}  // namespace wattweek::report
