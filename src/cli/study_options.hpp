#pragma once
// The study that the command line names, with what `--tariff`, `--years` and `--baseline` change in
// it, and the month that `--month` asks about.

#include <optional>
#include <variant>
#include <vector>

#include "cli/arguments.hpp"
#include "cli/files.hpp"
#include "cli/outcome.hpp"
#include "wattweek/read/read.hpp"

namespace wattweek::cli {

/// The study under each `--tariff`, in their order; without one, the study as it is. `sources`,
/// where given, gets what was read for it.
std::variant<std::vector<read::StudyInput>, Outcome> studies_of(const Arguments& arguments,
                                                                Sources* sources = nullptr);

/// Which of the study's months `--month` names; nothing where it is not given.
std::variant<std::optional<std::size_t>, Misuse> month_of(const model::Study& study,
                                                          const Arguments& arguments);

}  // namespace wattweek::cli
