#include "wattweek/chart/months.hpp"

#include <doctest/doctest.h>

#include <set>
#include <vector>

#include "parts.hpp"
#include "samples.hpp"
#include "stack.hpp"
#include "svg_reading.hpp"
#include "wattweek/chart/palette.hpp"

namespace wattweek::chart {
namespace {

const Frame kFrame{"m", "Title", "Description", false, false};

TEST_CASE("parts lie on each other, those below zero under it") {
  const auto places = stacked({{"a", {1, -1}}, {"b", {2, 3}}, {"c", {4, -2}}}, 2);
  CHECK(places[0][0].low == 0);
  CHECK(places[0][0].high == 1);
  CHECK(places[1][0].low == 1);
  CHECK(places[2][0].high == 7);
  CHECK(places[0][1].low == -1);
  CHECK(places[1][1].high == 3);
  CHECK(places[2][1].low == -3);
  CHECK(places[2][1].high == -1);
}

TEST_CASE("of too many parts the largest stay in order, and the rest add up to one") {
  const std::vector<Part> parts = {
      {"a", {1, 1}}, {"b", {9, 0}}, {"c", {2, 2}}, {"d", {-5, -5}}, {"e", {1, 1}}};
  const auto kept = merged(parts, 3);
  REQUIRE(kept.size() == 3);
  CHECK(kept[0].name == "b");
  CHECK(kept[1].name == "d");
  CHECK(kept[2].name == "3 others");
  CHECK(kept[2].values == std::vector<double>{4, 4});
  CHECK(sums(kept, 2) == sums(parts, 2));
  CHECK(merged(parts, 5).size() == 5);
}

TEST_CASE("forty workloads in forty months are drawn as seven and 33 others") {
  for (const Sample& sample : large_samples()) {
    if (sample.name != "many-parts") continue;
    CHECK(texts_that_say(sample.svg, "33 others").size() == 1);
    CHECK(elements(sample.svg, "pattern").size() == 7);  // The first part is plain.
    CHECK(texts_with(sample.svg, "2027-").size() == 2);
  }
}

TEST_CASE("each part has another pattern, and each of 64 lines another pair of colour and dashes") {
  std::set<std::string> fills;
  for (std::size_t i = 0; i < kSeriesColours; ++i) fills.insert(pattern_fill("p", i));
  CHECK(fills.size() == kSeriesColours);
  std::set<std::string> hatches;
  for (const Element& path : elements("<g>" + pattern_definitions("p", 8) + "</g>", "path")) {
    if (path.has_class("hatch")) hatches.insert(path.attributes.at("d"));
  }
  CHECK(hatches.size() == kSeriesColours - 1);
  std::set<std::string> lines;
  for (std::size_t i = 0; i < 64; ++i) lines.insert(colour_class(i) + dashes(i));
  CHECK(lines.size() == 64);
}

TEST_CASE("months tell their numbers under the pointer and their sums over the columns") {
  const std::string picture =
      svg(StackedMonths{kFrame, "kWh a month", {"Jan", "Feb"}, {{"a", {1.5, 2}}, {"b", {3, 4}}}});
  CHECK(picture.find("<title>Jan: a 1.5; b 3; in all 4.5</title>") != std::string::npos);
  CHECK(texts_that_say(picture, "4.50").size() == 1);
  CHECK(texts_that_say(picture, "6.00").size() == 1);
  CHECK(texts_that_say(picture, "kWh a month").size() == 1);
}

TEST_CASE("columns are as high as their values, one part on the other") {
  const std::string picture = svg(StackedMonths{kFrame, "kWh", {"Jan"}, {{"a", {2}}, {"b", {6}}}});
  std::vector<std::vector<double>> boxes;  // Left, top, right, bottom.
  for (const Element& path : elements(picture, "path")) {
    if (path.has_class("part")) boxes.push_back(numbers_in(path.attributes.at("d")));
  }
  REQUIRE(boxes.size() == 2);
  const double a = boxes[0][3] - boxes[0][1];
  CHECK(a > 0);
  CHECK(boxes[1][3] == boxes[0][1]);
  CHECK(boxes[1][3] - boxes[1][1] == doctest::Approx(3 * a));
}

TEST_CASE("months of nothing, one month, and months without parts are drawn") {
  CHECK(texts_that_say(svg(StackedMonths{kFrame, "kWh", {}, {}}), "0.0").size() == 1);
  CHECK(texts_that_say(svg(StackedMonths{kFrame, "kWh", {"Jan"}, {}}), "Jan").size() == 1);
  CHECK(texts_that_say(svg(StackedMonths{kFrame, "kWh", {"Jan"}, {{"a", {0}}}}), "a").size() == 1);
}

}  // namespace
}  // namespace wattweek::chart
