#pragma once
// Where curves cross.

#include <functional>
#include <optional>
#include <vector>

#include "wattweek/decide/what_if.hpp"

namespace wattweek::decide {

/// The criteria of all candidates at a value.
using CriteriaAt = std::function<const std::vector<double>&(double value)>;

/// See `WhatIf::crossings`: those of one candidate alone, where `of` names it. `values` ascend and
/// are where equality is looked for first.
std::vector<Crossing> find_crossings(const CriteriaAt& criteria_at,
                                     const std::vector<double>& values,
                                     std::optional<std::size_t> of = std::nullopt);

}  // namespace wattweek::decide
