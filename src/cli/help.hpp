#pragma once
// Help texts, laid out from the table of commands. All ASCII, at most 80 columns.

#include <string>

#include "cli/commands.hpp"

namespace wattweek::cli {

std::string overview_help();

std::string command_help(const Command& command);

/// `wattweek compare STUDY.toml [--format FORMAT] ...`.
std::string usage(const Command& command);

}  // namespace wattweek::cli
