#pragma once
// The study that the command line names, with what `--tariff`, `--years` and `--baseline` change in
// it.

#include <variant>
#include <vector>

#include "cli/arguments.hpp"
#include "cli/outcome.hpp"
#include "wattweek/read/read.hpp"

namespace wattweek::cli {

/// The study under each `--tariff`, in their order; without one, the study as it is.
std::variant<std::vector<read::StudyInput>, Outcome> studies_of(const Arguments& arguments);

}  // namespace wattweek::cli
