#pragma once
// The small tables of a study: household, carbon, finance, meters.

#include <optional>
#include <vector>

#include "ids.hpp"
#include "table.hpp"
#include "wattweek/model/study.hpp"

namespace wattweek::read {

model::Household read_household(const Table& study, const Ids& candidates);

std::optional<units::Range<double>> read_carbon(const Table& study);

/// `months` of the study, where it could be read.
std::optional<model::Finance> read_finance(const Table& study, std::optional<int> months);

std::vector<model::Meter> read_meters(const Table& study);

}  // namespace wattweek::read
