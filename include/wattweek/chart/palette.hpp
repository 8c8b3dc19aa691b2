#pragma once
// The colours of all pictures, light and dark. Series' colours were sought by a search for the
// largest least distance (CIE 1976 L*a*b*) as seen with normal sight, protanopia, deuteranopia and
// tritanopia; tests/chart/palette_test.cpp reckons distances and contrasts anew. No colour stands
// alone: series have patterns, dashes and names as well.

#include <array>
#include <cstddef>
#include <string_view>

namespace wattweek::chart {

/// So many series have a colour of their own.
inline constexpr std::size_t kSeriesColours = 8;
/// So many shades has the map of the week.
inline constexpr std::size_t kShades = 7;

/// Colours as `#rrggbb`.
struct Palette {
  std::string_view paper;
  std::string_view ink;    ///< Names and numbers.
  std::string_view muted;  ///< Units, axes, marks.
  std::string_view grid;   ///< Thin lines that only lead the eye: no contrast is promised.
  std::array<std::string_view, kSeriesColours> series;
  std::array<std::string_view, kShades> shades;  ///< From few watts to many.
};

/// Dark on light: print, and screens that ask for nothing else.
inline constexpr Palette kLight = {
    "#ffffff",
    "#1d2126",
    "#555c66",
    "#dfe2e6",
    {"#1c51b2", "#b76b13", "#721851", "#169e6f", "#c33841", "#3b4305", "#bd73cc", "#827c92"},
    {"#f4ead1", "#ebc198", "#dc9961", "#c07368", "#a24d6b", "#71385f", "#3f2552"}};

/// Light on dark.
inline constexpr Palette kDark = {
    "#15181c",
    "#eceef1",
    "#a9b0ba",
    "#343a42",
    {"#5d98ff", "#f0a355", "#9e53ad", "#62ecca", "#c55641", "#c7b082", "#d2d6ff", "#7c899a"},
    {"#3f2552", "#71385f", "#a24d6b", "#c07368", "#dc9961", "#ebc198", "#f4ead1"}};

}  // namespace wattweek::chart
