#pragma once
// `compare` with several `--tariff`.

#include "cli/arguments.hpp"
#include "cli/outcome.hpp"
#include "wattweek/report/report.hpp"

namespace wattweek::cli {

/// The study's candidates under each of the tariffs, side by side. \pre There are two or more.
Outcome compare_under_tariffs(const Arguments& arguments, const report::Style& style);

}  // namespace wattweek::cli
