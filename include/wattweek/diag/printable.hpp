#pragma once
// Text from a file or a command line, made safe to show.

#include <string>
#include <string_view>

namespace wattweek::diag {

/// The text with everything that could command a terminal or turn the reading order around
/// shown as `\xNN`: control characters (C0, DEL, C1) by their code, and byte by byte line and
/// paragraph separators, bidirectional overrides and isolates, and what is not UTF-8. Tab and
/// line end are control characters too.
std::string printable(std::string_view text);

/// Characters (code points) of UTF-8 text, each taken as one column wide.
std::size_t character_count(std::string_view text);

}  // namespace wattweek::diag
