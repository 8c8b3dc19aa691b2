#pragma once
// A syntax error in words that help: what people mistype in such files, and for the rest what
// the parser says, in plain terms.

#include <string>
#include <string_view>

#include "file.hpp"

namespace wattweek::read {

/// The message for a syntax error at a place, which the parser described so.
std::string syntax_problem(const File& file, toml::source_position at,
                           std::string_view description);

}  // namespace wattweek::read
