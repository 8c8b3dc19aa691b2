#pragma once
// SVG text as it grows: numbers, escapes and the few elements that pictures are made of.

#include <string>
#include <string_view>

namespace wattweek::chart {

/// A coordinate: at most one digit after the point, which is finer than eyes and printers.
std::string coordinate(double value);

/// `X Y` for path data.
std::string coordinates(double x, double y);

/// A rectangle as path data, from corner to corner.
std::string box_path(double left, double top, double right, double bottom);

/// A text that may be written from right to left, kept in its place within a sentence by the
/// isolates of Unicode (UAX #9); already escaped. ASCII needs none.
std::string isolated(std::string_view text);

/// The inside of a picture.
class Canvas {
 public:
  /// Appends ready markup.
  void add(std::string_view markup) { out_ += markup; }

  /// A path. `classes` are of the style sheet; `attributes`, where any, end in no blank.
  void path(std::string_view data, std::string_view classes, std::string_view attributes = "");

  /// One line of text, its base line at y; escaped here. The classes `mid` and `end` anchor it.
  void text(double x, double y, std::string_view words, std::string_view classes = "");

  /// A rectangle that is not seen, whose title shows under the pointer. `title` is escaped.
  void hover(double left, double top, double right, double bottom, std::string_view title);

  const std::string& markup() const { return out_; }

 private:
  std::string out_;
};

}  // namespace wattweek::chart
