#pragma once
// `whatif --shift` and `whatif --rest`.

#include "cli/arguments.hpp"
#include "cli/outcome.hpp"
#include "wattweek/report/report.hpp"

namespace wattweek::cli {

Outcome run_shift(const Arguments& arguments, const std::string& format,
                  const report::Style& style);

Outcome run_rest(const Arguments& arguments, const std::string& format, const report::Style& style);

}  // namespace wattweek::cli
