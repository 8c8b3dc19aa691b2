#pragma once
// The width of text, as a terminal counts it.

#include <algorithm>
#include <sstream>
#include <string>

#include "wattweek/diag/printable.hpp"

namespace wattweek::tests {

inline std::size_t widest_line(const std::string& text) {
  std::istringstream lines(text);
  std::size_t widest = 0;
  for (std::string line; std::getline(lines, line);) {
    widest = std::max(widest, diag::column_count(line));
  }
  return widest;
}

}  // namespace wattweek::tests
