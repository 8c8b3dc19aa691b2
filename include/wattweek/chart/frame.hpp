#pragma once
// What all pictures share: a static SVG of 480 units' width, without a script, an outside file or
// a font of its own. It stands alone as a file and stands in a page as it is, in light, dark and
// print. Text is 13 units high or higher, so that it can be read on a telephone 360 pixels wide.

#include <string>

namespace wattweek::chart {

/// The width of every picture; its height follows from what is in it.
inline constexpr double kWidth = 480;

/// What every picture has besides its figures. Any text is safe here: characters that XML or a
/// reading order would stumble over are shown as `\xNN`, as `diag::printable` does.
struct Frame {
  /// Begins each id within the picture. \pre letters, digits and dashes, a letter first; another
  /// one for each picture of a page.
  std::string prefix;
  std::string title;        ///< The question that the picture answers.
  std::string description;  ///< What is to be seen, with its main numbers: for those who cannot.
  bool heading = true;    ///< Whether the title is drawn too, as a picture that stands alone needs.
  bool own_style = true;  ///< False where the page that holds the picture holds `style_sheet()`.
};

/// The style sheet of all pictures: the colours of palette.hpp, the dark ones only on a screen
/// that asks for them, so that print is always dark on light. All rules begin with `.ww-chart`.
std::string style_sheet();

}  // namespace wattweek::chart
