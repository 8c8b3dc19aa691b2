#pragma once
// The blocks of a tariff: for each month of the year a ladder of prices.

#include <vector>

#include "table.hpp"
#include "wattweek/model/tariff.hpp"

namespace wattweek::read {

/// In file order. In each month the limits rise strictly and the last block, and only it, has
/// none; a month without blocks is fine. What breaks that is reported.
std::vector<model::Block> read_blocks(const Table& tariff);

}  // namespace wattweek::read
