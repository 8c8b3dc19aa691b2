#pragma once
// `--draws`, `--seed` and `--threads`.

#include <optional>
#include <variant>

#include "cli/arguments.hpp"
#include "wattweek/decide/uncertainty.hpp"
#include "wattweek/model/study.hpp"
#include "wattweek/read/read.hpp"

namespace wattweek::cli {

/// How many threads to use: `--threads`, or as many as the machine has cores.
std::variant<unsigned, Misuse> threads_of(const Arguments& arguments);

/// What `--draws` asks for; nothing where it is not given. Refused where nothing says over which
/// time candidates are compared.
std::variant<std::optional<decide::DrawOptions>, Misuse> draws_of(const model::Study& study,
                                                                  const Arguments& arguments);

/// As many draws as are not felt, which nobody asked for; nothing where no range is open.
std::optional<decide::DrawOptions> unasked_draws(const read::StudyInput& input, unsigned threads);

/// Why no candidate can be called best, with what would change that; see `decide::criterion_of`.
std::optional<Misuse> without_criterion(std::string_view what, const model::Study& study);

}  // namespace wattweek::cli
