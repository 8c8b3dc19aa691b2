#pragma once
// Sentences broken into lines.

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace wattweek::report {

/// Printable text in lines of at most `columns`, broken at blanks; a word too long for a line is
/// cut. Never without a line.
std::vector<std::string> wrapped(std::string_view text, std::size_t columns);

/// `first`, then `text` in lines; further lines are indented to stand below the text. No line ends
/// with a blank.
std::string hanging(std::string_view first, std::string_view text, std::size_t columns);

}  // namespace wattweek::report
