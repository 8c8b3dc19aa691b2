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

/// Columns that UTF-8 text takes on a terminal: two for each wide East Asian character and emoji,
/// one for any other (accents that stand alone too: so a line is never wider than was counted).
std::size_t column_count(std::string_view text);

/// Bytes of the longest beginning of UTF-8 text that takes no more than so many columns.
std::size_t bytes_within(std::string_view text, std::size_t columns);

}  // namespace wattweek::diag
