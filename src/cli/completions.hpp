#pragma once
// What the shells offer at the Tab key, from the table of commands: commands, options, their
// accepted words, and files or folders where the table asks for them.

#include <string>
#include <vector>

#include "cli/commands.hpp"

namespace wattweek::cli {

/// Each is the whole of a file; the shell finds it by the name under which CMake installs it.
std::string bash_completion(const std::vector<Command>& table = commands());
std::string zsh_completion(const std::vector<Command>& table = commands());
std::string fish_completion(const std::vector<Command>& table = commands());

}  // namespace wattweek::cli
