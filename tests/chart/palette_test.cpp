#include "wattweek/chart/palette.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <string>
#include <vector>

namespace wattweek::chart {
namespace {

using Triple = std::array<double, 3>;
using Matrix = std::array<Triple, 3>;

// The threshold as in sRGB (IEC 61966-2-1); WCAG 2.2 has the same since its erratum of 2021. No
// 8-bit value lies between it and the older 0.03928.
double linear(double channel) {
  return channel <= 0.04045 ? channel / 12.92 : std::pow((channel + 0.055) / 1.055, 2.4);
}

Triple linear_rgb(std::string_view hex) {
  REQUIRE(hex.size() == 7);
  Triple rgb{};
  for (std::size_t i = 0; i < 3; ++i) {
    rgb[i] = linear(std::stoi(std::string(hex.substr(1 + 2 * i, 2)), nullptr, 16) / 255.0);
  }
  return rgb;
}

Triple times(const Matrix& matrix, const Triple& v) {
  Triple result{};
  for (std::size_t i = 0; i < 3; ++i) {
    result[i] = matrix[i][0] * v[0] + matrix[i][1] * v[1] + matrix[i][2] * v[2];
  }
  return result;
}

// WCAG 2.2 (W3C, 2023), definition "relative luminance".
double luminance(std::string_view hex) {
  const Triple rgb = linear_rgb(hex);
  return 0.2126 * rgb[0] + 0.7152 * rgb[1] + 0.0722 * rgb[2];
}

// The same, definition "contrast ratio".
double contrast(std::string_view a, std::string_view b) {
  const double la = luminance(a);
  const double lb = luminance(b);
  return (std::max(la, lb) + 0.05) / (std::min(la, lb) + 0.05);
}

// sRGB to CIE XYZ, D65 (IEC 61966-2-1, annex), then CIE 1976 L*a*b*. From memory.
Triple lab(Triple rgb) {
  constexpr Matrix kToXyz = {{{0.4124564, 0.3575761, 0.1804375},
                              {0.2126729, 0.7151522, 0.0721750},
                              {0.0193339, 0.1191920, 0.9503041}}};
  for (double& channel : rgb) channel = std::clamp(channel, 0.0, 1.0);
  const Triple xyz = times(kToXyz, rgb);
  constexpr Triple kWhite = {0.95047, 1, 1.08883};
  Triple f{};
  for (std::size_t i = 0; i < 3; ++i) {
    const double t = xyz[i] / kWhite[i];
    constexpr double kSixth = 6.0 / 29;
    f[i] = t > kSixth * kSixth * kSixth ? std::cbrt(t) : t / (3 * kSixth * kSixth) + 4.0 / 29;
  }
  return {116 * f[1] - 16, 500 * (f[0] - f[1]), 200 * (f[1] - f[2])};
}

double distance(const Triple& a, const Triple& b) {
  return std::hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
}

// Machado, Oliveira, Fernandes, "A physiologically-based model for simulation of color vision
// deficiency", IEEE Trans. Vis. Comput. Graph. 15 (6), 2009: the matrices of severity 1.0, as
// published with the paper. They act on linear RGB.
const std::vector<Matrix> kSights = {{{{1, 0, 0}, {0, 1, 0}, {0, 0, 1}}},  // normal
                                     {{{0.152286, 1.052583, -0.204868},    // protanopia
                                       {0.114503, 0.786281, 0.099216},
                                       {-0.003882, -0.048116, 1.051998}}},
                                     {{{0.367322, 0.860646, -0.227968},  // deuteranopia
                                       {0.280085, 0.672501, 0.047413},
                                       {-0.011820, 0.042940, 0.968881}}},
                                     {{{1.255528, -0.076749, -0.178779},  // tritanopia
                                       {-0.078411, 0.930809, 0.147602},
                                       {0.004733, 0.691367, 0.303900}}}};

double least_distance(const Palette& palette, const Matrix& sight) {
  double least = 1000;
  for (std::size_t i = 0; i < kSeriesColours; ++i) {
    for (std::size_t j = 0; j < i; ++j) {
      least = std::min(least, distance(lab(times(sight, linear_rgb(palette.series[i]))),
                                       lab(times(sight, linear_rgb(palette.series[j])))));
    }
  }
  return least;
}

TEST_CASE("the contrast of black on white and of a grey is what WCAG says") {
  CHECK(contrast("#000000", "#ffffff") == doctest::Approx(21));
  // The grey that is often named as the lightest for text on white (common practice, no source).
  CHECK(contrast("#767676", "#ffffff") == doctest::Approx(4.54).epsilon(0.001));
}

// WCAG 2.2, success criterion 1.4.3: text at least 4.5:1.
TEST_CASE("text stands out from the paper in light and dark") {
  for (const Palette& palette : {kLight, kDark}) {
    CHECK(contrast(palette.ink, palette.paper) >= 7);
    CHECK(contrast(palette.muted, palette.paper) >= 4.5);
  }
}

// WCAG 2.2, success criterion 1.4.11: graphics at least 3:1 against what is next to them. Hatches
// and the edges of stacked parts have the colour of the paper.
TEST_CASE("series, axes and whiskers stand out from the paper in light and dark") {
  for (const Palette& palette : {kLight, kDark}) {
    for (const std::string_view colour : palette.series) {
      CAPTURE(std::string(colour));
      CHECK(contrast(colour, palette.paper) >= 3);
    }
    CHECK(contrast(palette.muted, palette.paper) >= 3);
    CHECK(contrast(palette.ink, palette.paper) >= 3);
  }
}

// 20 is about nine times what a trained eye just sees, 2.3 (Mahy, Van Eycken, Oosterlinck 1994,
// from memory); colours of a legend are compared from memory and over a distance.
TEST_CASE("colours of series differ for those who do not see red, green or blue") {
  for (const Palette& palette : {kLight, kDark}) {
    for (const Matrix& sight : kSights) CHECK(least_distance(palette, sight) >= 20);
  }
}

TEST_CASE("shades differ in lightness alone, in one direction, away from the paper") {
  for (const Palette& palette : {kLight, kDark}) {
    const auto lightness = [](std::string_view colour) { return lab(linear_rgb(colour))[0]; };
    const double sign = lightness(palette.paper) > 50 ? -1 : 1;
    for (std::size_t i = 1; i < kShades; ++i) {
      CHECK(sign * (lightness(palette.shades[i]) - lightness(palette.shades[i - 1])) >= 10);
    }
  }
}

}  // namespace
}  // namespace wattweek::chart
