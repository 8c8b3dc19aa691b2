#include <fmt/format.h>

#include <iterator>

#include "wattweek/chart/frame.hpp"
#include "wattweek/chart/palette.hpp"

namespace wattweek::chart {
namespace {

// What does not depend on colours. A map's cells are strokes: rows of one path, 20 high.
constexpr std::string_view kShapes = R"(.ww-chart{max-width:100%;height:auto}
.ww-chart text{font-family:system-ui,sans-serif;font-size:14px;direction:ltr;unicode-bidi:isolate}
.ww-chart .small{font-size:13px}
.ww-chart .heading{font-size:16px;font-weight:600}
.ww-chart .strong{font-weight:600}
.ww-chart .end{text-anchor:end}
.ww-chart .mid{text-anchor:middle}
.ww-chart .over{stroke-width:4px;stroke-linejoin:round;paint-order:stroke}
.ww-chart .grid,.ww-chart .axis,.ww-chart .marker,.ww-chart .lead{fill:none;stroke-width:1px}
.ww-chart .whisker,.ww-chart .line{fill:none;stroke-width:2px}
.ww-chart .halo{fill:none;stroke-width:5px}
.ww-chart .part{stroke-width:1px}
.ww-chart .hatch{fill:none;stroke-width:1.8px;stroke-linecap:round}
.ww-chart .ring{stroke-width:2px}
.ww-chart .line,.ww-chart .lead{stroke:currentColor}
.ww-chart .area{fill:currentColor}
.ww-chart .band{fill:currentColor;fill-opacity:.18;stroke:currentColor;stroke-width:.7px}
.ww-chart .cells{fill:none;stroke:currentColor;stroke-width:20px}
.ww-chart .hit{fill:none;pointer-events:all}
)";

// The rules that a palette fills; the second palette's come later and win.
std::string colours(const Palette& palette) {
  std::string rules = fmt::format(
      ".ww-chart text{{fill:{1}}}\n.ww-chart .muted{{fill:{2}}}\n.ww-chart .paper{{fill:{0}}}\n"
      ".ww-chart .ring{{fill:{0};stroke:{1}}}\n.ww-chart .whisker{{stroke:{1}}}\n"
      ".ww-chart .over,.ww-chart .halo,.ww-chart .hatch,.ww-chart .part{{stroke:{0}}}\n"
      ".ww-chart .axis,.ww-chart .marker{{stroke:{2}}}\n.ww-chart .grid{{stroke:{3}}}\n",
      palette.paper, palette.ink, palette.muted, palette.grid);
  const auto out = std::back_inserter(rules);
  for (std::size_t i = 0; i < kSeriesColours; ++i) {
    fmt::format_to(out, ".ww-chart .c{}{{color:{}}}\n", i, palette.series[i]);
  }
  for (std::size_t i = 0; i < kShades; ++i) {
    fmt::format_to(out, ".ww-chart .w{}{{color:{}}}\n", i, palette.shades[i]);
  }
  return rules;
}

}  // namespace

std::string style_sheet() {
  return fmt::format("{}{}@media screen and (prefers-color-scheme:dark){{\n{}}}\n", kShapes,
                     colours(kLight), colours(kDark));
}

}  // namespace wattweek::chart
