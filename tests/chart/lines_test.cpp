#include "wattweek/chart/lines.hpp"

#include <doctest/doctest.h>

#include <algorithm>

#include "samples.hpp"
#include "svg_reading.hpp"

namespace wattweek::chart {
namespace {

const Frame kFrame{"l", "Title", "Description", false, false};

Lines two_lines() {
  return {kFrame,
          "price",
          "EUR",
          true,
          {{"a", {{1, 100, {}}, {2, 200, {}}}}, {"b", {{1, 150, {}}, {2, 150, {}}}}},
          {}};
}

std::vector<std::vector<double>> lines_in(const std::string& picture) {
  std::vector<std::vector<double>> found;
  for (const Element& path : elements(picture, "path")) {
    if (path.has_class("line")) found.push_back(numbers_in(path.attributes.at("d")));
  }
  return found;
}

TEST_CASE("lines cross where their values do, and the marker's ring is there") {
  Lines picture = two_lines();
  picture.markers = {{1.5, 150, "equal at 1.5"}};
  const std::string drawn = svg(picture);
  const auto lines = lines_in(drawn);
  const auto ring = elements(drawn, "circle").at(0);
  CHECK(ring.number("cx") == doctest::Approx((lines[0][0] + lines[0][2]) / 2).epsilon(0.001));
  CHECK(ring.number("cy") == doctest::Approx((lines[0][1] + lines[0][3]) / 2).epsilon(0.001));
  CHECK(ring.number("cy") == lines[1][1]);
  CHECK(texts_that_say(drawn, "equal at 1.5").size() == 1);
}

TEST_CASE("each line is named at its end and has dashes of its own") {
  const std::string drawn = svg(two_lines());
  CHECK(texts_that_say(drawn, "a").size() == 1);
  CHECK(texts_that_say(drawn, "b").size() == 1);
  CHECK(texts_that_say(drawn, "price").size() == 1);
  CHECK(texts_that_say(drawn, "EUR").size() == 1);
  CHECK(texts_that_say(drawn, "0").size() == 1);  // From zero.
}

TEST_CASE("lines far from zero may leave zero out") {
  Lines picture = two_lines();
  picture.y_from_zero = false;
  CHECK(texts_that_say(svg(picture), "0").empty());
}

TEST_CASE("a band has its line within") {
  Lines picture = two_lines();
  picture.lines[0].points[0].range = Range{80, 130};
  for (const Element& path : elements(svg(picture), "path")) {
    if (!path.has_class("band")) continue;
    const auto band = numbers_in(path.attributes.at("d"));
    const auto line = lines_in(svg(picture)).at(0);
    REQUIRE(band.size() == 8);
    CHECK(band[1] < line[1]);  // Above.
    CHECK(band[7] > line[1]);  // Below.
    CHECK(band[3] == line[3]);
    CHECK(band[5] == line[3]);
  }
}

TEST_CASE("fifteen names stand one below the other, at least a line apart") {
  for (const Sample& sample : large_samples()) {
    if (sample.name != "many-lines" && sample.name != "long-lines") continue;
    std::vector<double> heights;
    for (int i = 1; i <= 15; ++i) {
      const std::string number = std::to_string(i);
      const std::string name = sample.name == "many-lines" ? "candidate " + number : number;
      const auto texts = texts_that_say(sample.svg, name);
      REQUIRE(texts.size() == 1);
      heights.push_back(texts[0].number("y"));
    }
    std::sort(heights.begin(), heights.end());
    for (std::size_t i = 1; i < heights.size(); ++i) CHECK(heights[i] - heights[i - 1] >= 16.8);
  }
}

TEST_CASE("names that are too long for the ends stand in full in a legend") {
  for (const Sample& sample : large_samples()) {
    if (sample.name != "long-lines") continue;
    CHECK(texts_with(sample.svg, "7:\u00A0A second-hand rack server").size() == 1);
    CHECK(texts_with(sample.svg, "no. 007").size() == 1);
    CHECK(texts_with(sample.svg, "…").empty());
  }
}

TEST_CASE("labels of markers that would meet stand in rows") {
  Lines picture = two_lines();
  picture.markers = {{1.5, {}, "a first label"}, {1.51, {}, "a second label"}, {2, {}, "end"}};
  const std::string drawn = svg(picture);
  const double first = texts_that_say(drawn, "a first label").at(0).number("y");
  CHECK(texts_that_say(drawn, "a second label").at(0).number("y") == first - 17);
  CHECK(texts_that_say(drawn, "end").at(0).number("y") == first);
}

TEST_CASE("no lines, a line of nothing, of one point and of one value are drawn") {
  CHECK(lines_in(svg(Lines{kFrame, "x", "y", true, {}, {}})).empty());
  CHECK(lines_in(svg(Lines{kFrame, "x", "y", true, {{"a", {}}}, {}})).empty());
  const std::string dot = svg(Lines{kFrame, "x", "y", false, {{"a", {{2, 3, {}}}}}, {}});
  CHECK(elements(dot, "circle").size() == 1);
  const Lines flat{kFrame, "x", "y", false, {{"a", {{1, 3, {}}, {2, 3, {}}}}}, {}};
  CHECK(lines_in(svg(flat)).size() == 1);
}

}  // namespace
}  // namespace wattweek::chart
