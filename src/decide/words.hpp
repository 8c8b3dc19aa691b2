#pragma once
// Names in sentences.

#include <string>

namespace wattweek::decide {

/// The name in single quotes.
std::string quoted(const std::string& name);

}  // namespace wattweek::decide
