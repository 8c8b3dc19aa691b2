#pragma once

#include <string>

namespace wattweek::report {

/// The style sheet of a page and of the pictures in it: light, dark and paper, from a telephone of
/// 360 pixels on. Colours are those of the pictures.
std::string page_style();

}  // namespace wattweek::report
