#pragma once
// The engine's answer beside the dumb one.

#include <string>
#include <vector>

#include "reckoned.hpp"
#include "wattweek/decide/assessment.hpp"
#include "wattweek/model/study.hpp"

namespace wattweek::oracle {

/// Within the project's tolerance (support/about.hpp).
bool agree(double a, double b);

/// Every member of the results in which the two do not agree, named as in the results with
/// both figures; empty where they agree.
std::vector<std::string> differences(const model::Study& study, const decide::Assessment& engine,
                                     const Reckoned& dumb);

/// At most `most` of them, on lines.
std::string on_lines(const std::vector<std::string>& differences, std::size_t most);

}  // namespace wattweek::oracle
