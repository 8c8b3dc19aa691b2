#include "parts.hpp"

#include <fmt/format.h>

#include <array>
#include <cassert>

#include "wattweek/chart/palette.hpp"

namespace wattweek::chart {
namespace {

// Lines in the colour of the paper on a tile of 8 by 8; the first series is plain.
constexpr std::array<std::string_view, kSeriesColours> kHatches = {
    "",
    "M-1 1L1-1M-1 9L9-1M7 9L9 7",           // rising
    "M2 2h.1M6 6h.1",                       // dots
    "M0 4H8",                               // level
    "M-1-1L9 9M-1 7L1 9M7-1L9 1",           // falling
    "M4 0V8",                               // upright
    "M0 4H8M4 0V8",                         // a grid
    "M-1 1L1-1M-1 9L9-1M7 9L9 7M-1-1L9 9",  // crossed
};

constexpr std::array<std::string_view, kSeriesColours> kDashes = {
    "", "8 4", "2 3", "12 3 2 3", "5 2", "14 5", "8 2 2 2 2 2", "4 6"};

}  // namespace

std::string pattern_definitions(std::string_view prefix, std::size_t count) {
  assert(count <= kSeriesColours);
  std::string definitions;
  for (std::size_t i = 1; i < count; ++i) {
    definitions += fmt::format(
        "<pattern id=\"{}-p{}\" width=\"8\" height=\"8\" patternUnits=\"userSpaceOnUse\">"
        "<path class=\"c{} area\" d=\"M0 0H8V8H0z\"/><path class=\"hatch\" d=\"{}\"/></pattern>\n",
        prefix, i, i, kHatches[i]);
  }
  return definitions.empty() ? "" : "<defs>\n" + definitions + "</defs>\n";
}

std::string pattern_fill(std::string_view prefix, std::size_t series) {
  assert(series < kSeriesColours);
  if (series == 0) return "fill=\"currentColor\"";
  return fmt::format("fill=\"url(#{}-p{})\"", prefix, series);
}

std::string colour_class(std::size_t series) { return fmt::format("c{}", series % kSeriesColours); }

std::string dashes(std::size_t series) {
  const std::string_view pattern = kDashes[(series + series / kSeriesColours) % kSeriesColours];
  return pattern.empty() ? "" : fmt::format("stroke-dasharray=\"{}\"", pattern);
}

}  // namespace wattweek::chart
