#pragma once
// Start here: the words of a command line in, what is printed and the exit code out.

#include <string>
#include <vector>

#include "cli/arguments.hpp"
#include "cli/outcome.hpp"

namespace wattweek::cli {

/// Runs the command that the words name (the program's own name is not among them). Text is
/// laid out for `columns`. Prints nothing but progress.
Outcome run(const std::vector<std::string>& words, int columns);

/// The commands, each with its words taken apart.
Outcome run_estimate(const Arguments& arguments, int columns);
Outcome run_compare(const Arguments& arguments, int columns);
Outcome run_check(const Arguments& arguments);
Outcome run_quick(const Arguments& arguments);

}  // namespace wattweek::cli
