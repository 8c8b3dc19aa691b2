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

/// Bold letters are so much wider.
inline constexpr double kBold = 1.1;

/// The width of a text of this font size. \pre `text` is printable.
double text_width(std::string_view text, double size);

/// The text, made printable, cut to a width: its beginning and its end with "…" between them, for
/// names often differ in their last letters only.
std::string shortened(std::string_view text, double width, double size);

/// The room for lines of text.
struct Room {
  double first_width = 0;
  double width = 0;  ///< Of all lines but the first.
  std::size_t most_lines = 1;
};

/// The text, made printable, broken at spaces (within a word that is too long) into lines, never
/// none; the last is shortened where there is no room for all.
std::vector<std::string> wrapped(std::string_view text, const Room& room, double size);

}  // namespace wattweek::chart
