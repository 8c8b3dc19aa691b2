#pragma once
// How far long work is.

#include <functional>
#include <string>

namespace wattweek::decide {

/// Called now and then with what is being done and how far it is, in [0, 1].
using Progress = std::function<void(const std::string& what, double fraction)>;

}  // namespace wattweek::decide
