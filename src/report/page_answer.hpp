#pragma once

#include <string>
#include <vector>

#include "shown.hpp"

namespace wattweek::report {

/// The answer, in two sentences (a third where the candidates do not serve the same), for people
/// who read no further: which candidate, what it costs, how sure that is.
std::vector<std::string> answer(const Shown& s);

}  // namespace wattweek::report
