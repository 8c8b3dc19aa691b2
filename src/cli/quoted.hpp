#pragma once
// Texts made safe for the programs that will read them.

#include <string>
#include <string_view>

namespace wattweek::cli {

/// Does no shell see anything but a word in it?
bool is_plain(std::string_view text);

/// One word for bash and zsh, whatever it holds; a plain one as it is.
std::string single_quoted(std::string_view text);

/// With a backslash before each of these characters.
std::string backslashed(std::string_view text, std::string_view characters);

}  // namespace wattweek::cli
