#include "wattweek/chart/frame.hpp"

#include <fmt/format.h>

#include <vector>

#include "framed.hpp"
#include "letters.hpp"
#include "wattweek/diag/markup.hpp"

namespace wattweek::chart {
namespace {

constexpr double kHeadingLine = 21;

// Draws the heading's lines; returns where they end.
double draw_heading(Canvas& canvas, const Frame& frame) {
  double bottom = kMargin;
  if (!frame.heading) return bottom;
  const double width = kWidth - 2 * kMargin;
  for (const std::string& line : wrapped(frame.title, {width, width, 3}, kBold * kHeadingSize)) {
    bottom += kHeadingLine;
    canvas.text(kMargin, bottom - 4, line, "heading");
  }
  return bottom + 6;
}

// Paper under everything: a picture that stands alone has no page to give it a ground.
std::string paper(double height) {
  return fmt::format("<path class=\"paper\" d=\"{}\"/>\n", box_path(0, 0, kWidth, height));
}

}  // namespace

std::string framed(const Frame& frame, const Canvas& inside, double height) {
  Canvas heading;
  const double top = draw_heading(heading, frame);
  const double whole = top + height + kMargin;
  const std::string style =
      frame.own_style ? fmt::format("<style>\n{}</style>\n", style_sheet()) : "";
  return fmt::format(
      "<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"ww-chart\" role=\"img\" "
      "aria-labelledby=\"{0}-title\" aria-describedby=\"{0}-desc\" width=\"{1}\" height=\"{2}\" "
      "viewBox=\"0 0 {1} {2}\">\n"
      "<title id=\"{0}-title\">{3}</title>\n<desc id=\"{0}-desc\">{4}</desc>\n{5}{6}{7}"
      "<g transform=\"translate(0 {8})\">\n{9}</g>\n</svg>\n",
      frame.prefix, coordinate(kWidth), coordinate(whole), diag::markup_text(frame.title),
      diag::markup_text(frame.description), style, paper(whole), heading.markup(), coordinate(top),
      inside.markup());
}

}  // namespace wattweek::chart
