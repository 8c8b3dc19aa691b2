#pragma once
// Text to TOML tree: the one place that calls the parser.

#include <optional>

#include "file.hpp"

namespace wattweek::read {

/// The root table of the file, or nothing and one problem reported: a text that is no text, or
/// its first syntax error, since nothing after that can be trusted.
std::optional<toml::table> parse(File& file);

}  // namespace wattweek::read
