#pragma once
// `new home` in a folder of its own, and the files that it wrote.

#include <string>

#include "program.hpp"

namespace wattweek::cli {

/// Runs `new home` with more words, in UTC unless they say otherwise; it must succeed.
Run made(const TemporaryFolder& folder, const std::string& words);

/// The text of a file in `home`.
std::string file(const TemporaryFolder& folder, const std::string& name);

bool has_line(const std::string& text, const std::string& line);

}  // namespace wattweek::cli
