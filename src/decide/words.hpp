#pragma once
// Numbers and names in sentences, the same in every locale.

#include <string>

namespace wattweek::decide {

/// The name in single quotes.
std::string quoted(const std::string& name);

/// The number with at most so many decimals, zeros at the end left out: 91.25, 8.5, 3.
std::string decimal(double value, int decimals);

}  // namespace wattweek::decide
