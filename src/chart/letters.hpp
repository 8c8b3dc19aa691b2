#pragma once
// How wide text will be. Nobody knows the reader's font: widths are estimated, rather too large.

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace wattweek::chart {

/// Font sizes of the style sheet.
inline constexpr double kHeadingSize = 16;
inline constexpr double kTextSize = 14;
inline constexpr double kSmallSize = 13;

/// The width of a text of this font size. \pre `text` is printable.
double text_width(std::string_view text, double size);

/// The text, made printable, cut to a width; what was cut ends in "…".
std::string shortened(std::string_view text, double width, double size);

/// The text, made printable, broken at spaces (within a word that is too long) into lines of a
/// width, at most so many; never none.
std::vector<std::string> wrapped(std::string_view text, double width, double size,
                                 std::size_t most_lines);

}  // namespace wattweek::chart
