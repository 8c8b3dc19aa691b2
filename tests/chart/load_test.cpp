#include "wattweek/chart/load.hpp"

#include <doctest/doctest.h>

#include <algorithm>

#include "svg_reading.hpp"

namespace wattweek::chart {
namespace {

const Frame kFrame{"d", "Title", "Description", false, false};

std::string curve_of(const std::vector<Load>& loads) {
  return svg(LoadDuration{kFrame, {{"server", loads}}});
}

std::vector<double> line_in(const std::string& picture) {
  for (const Element& path : elements(picture, "path")) {
    if (path.has_class("line")) return numbers_in(path.attributes.at("d"));
  }
  return {};
}

TEST_CASE("the area below the curve is the energy, whatever the order of the loads") {
  const std::vector<Load> loads = {{12, 6000}, {40, 760}, {18, 2000}, {12, 1000}};
  const auto line = line_in(curve_of(loads));
  REQUIRE(line.size() == 12);
  double area = 0;
  double bottom = 0;  // Where the watts are zero: the filled area goes there from the line's end.
  for (const Element& path : elements(curve_of(loads), "path")) {
    if (path.has_class("band")) bottom = numbers_in(path.attributes.at("d")).at(12);
  }
  for (std::size_t i = 0; i + 3 < line.size(); i += 2) {
    area += (line[i + 2] - line[i]) * (bottom - line[i + 1]);
  }
  const double unit_x = (line[10] - line[0]) / 9760;
  const double unit_y = (bottom - line[1]) / 40;
  double energy_wh = 0;
  for (const Load& load : loads) energy_wh += load.watts * load.hours;
  CHECK(area / (unit_x * unit_y) == doctest::Approx(energy_wh).epsilon(0.002));
}

TEST_CASE("the curve falls, and the same watts make one step") {
  const auto line = line_in(curve_of({{5, 100}, {9, 10}, {5, 200}, {9, 30}}));
  REQUIRE(line.size() == 8);
  for (std::size_t i = 2; i < line.size(); i += 2) {
    CHECK(line[i] >= line[i - 2]);
    CHECK(line[i + 1] >= line[i - 1]);
  }
  CHECK(line == line_in(curve_of({{9, 40}, {5, 300}})));
}

TEST_CASE("both axes begin at zero and tell their units") {
  const std::string picture = curve_of({{500, 4000}, {480, 4760}});
  CHECK(texts_that_say(picture, "0").size() == 2);
  CHECK(texts_that_say(picture, "W").size() == 1);
  CHECK(texts_that_say(picture, "hours at these watts or more").size() == 1);
}

// A February, a year, and ten years with two leap days.
TEST_CASE("the hours' axis holds a study of any length, with its last tick near its end") {
  for (const double hours : {672.0, 8760.0, 87648.0}) {
    CAPTURE(hours);
    const std::string picture = curve_of({{30, hours / 4}, {10, hours * 3 / 4}});
    double last = 0;
    for (const Element& text : elements(picture, "text")) {
      std::string figure;
      for (const char c : text.text) {
        if (c >= '0' && c <= '9') figure += c;
      }
      if (!figure.empty()) last = std::max(last, std::stod(figure));
    }
    CHECK(last > hours / 2);
    CHECK(last <= hours * 1.5);
  }
}

TEST_CASE("a curve of nothing, of no hours, of no watts and no curve are drawn") {
  CHECK(line_in(curve_of({})).empty());
  CHECK(line_in(curve_of({{5, 0}})).size() == 4);
  CHECK(line_in(curve_of({{0, 8760}})).size() == 4);
  CHECK(line_in(svg(LoadDuration{kFrame, {}})).empty());
}

}  // namespace
}  // namespace wattweek::chart
