#pragma once
// Months as people say them.

#include <string>

#include "wattweek/model/window.hpp"

namespace wattweek::report {

/// `jan`, `nov to feb`, `mar and sep to nov`; a range may run over the new year.
std::string months_words(const model::MonthSet& months);

}  // namespace wattweek::report
