#pragma once
// `--vary FACTOR=LOW..HIGH[:POINTS]`.

#include <string>
#include <variant>
#include <vector>

#include "cli/arguments.hpp"
#include "wattweek/decide/what_if.hpp"
#include "wattweek/model/study.hpp"

namespace wattweek::cli {

/// The sweeps that are asked for, in order; at most so many rows that they can be counted.
std::variant<std::vector<decide::Sweep>, Misuse> sweeps_of(const model::Study& study,
                                                           const Arguments& arguments);

}  // namespace wattweek::cli
