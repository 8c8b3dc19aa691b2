#pragma once
// Start here: the words of a command line in, what is printed and the exit code out.

#include <string>
#include <vector>

#include "cli/arguments.hpp"
#include "cli/outcome.hpp"
#include "wattweek/report/report.hpp"

namespace wattweek::cli {

/// Runs the command that the words name (the program's own name is not among them). Text is
/// laid out in `style`. Prints nothing but progress.
Outcome run(const std::vector<std::string>& words, const report::Style& style);

/// The commands, each with its words taken apart.
Outcome run_estimate(const Arguments& arguments, const report::Style& style);
Outcome run_compare(const Arguments& arguments, const report::Style& style);
Outcome run_what_if(const Arguments& arguments, const report::Style& style);
Outcome run_report(const Arguments& arguments);
Outcome run_fit(const Arguments& arguments, const report::Style& style);
Outcome run_check(const Arguments& arguments, const report::Style& style);
Outcome run_quick(const Arguments& arguments, const report::Style& style);
Outcome run_new(const Arguments& arguments, int columns);

/// What `new --list` prints.
Outcome list_shipped(int columns);

}  // namespace wattweek::cli
