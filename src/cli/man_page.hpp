#pragma once
// The manual page of section 1, laid out from the table of commands.

#include <string>
#include <string_view>
#include <vector>

#include "cli/commands.hpp"

namespace wattweek::cli {

/// In the `man` macros of roff; the same bytes for the same table and version.
std::string man_page(const std::vector<Command>& table = commands());

/// A line of text as roff reads it: nothing in it commands, and what stands between backticks
/// is bold.
std::string roff(std::string_view text);

}  // namespace wattweek::cli
