#pragma once
// The profile that `fit` writes.

#include <optional>
#include <string>
#include <variant>

#include "cli/fit_options.hpp"
#include "cli/outcome.hpp"
#include "wattweek/report/fit.hpp"

namespace wattweek::cli {

/// Why a profile could not be written under that name, so that nobody waits for a log to be read
/// first.
std::optional<Outcome> why_no_profile(const FitRequest& request);

/// Writes the profile, whole or not at all; what is said of it, or why it was not written.
std::variant<std::string, Outcome> write_profile(const FitRequest& request,
                                                 const report::FitShown& shown);

}  // namespace wattweek::cli
