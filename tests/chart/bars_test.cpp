#include "wattweek/chart/bars.hpp"

#include <doctest/doctest.h>

#include <algorithm>

#include "samples.hpp"
#include "svg_reading.hpp"

namespace wattweek::chart {
namespace {

const Frame kFrame{"bars", "Title", "Description", false, false};

std::string bars_of(const std::vector<Bar>& bars) { return svg(Bars{kFrame, "EUR a year", bars}); }

// Left and right end of each bar.
std::vector<Range> lengths(const std::string& picture) {
  std::vector<Range> found;
  for (const Element& path : elements(picture, "path")) {
    if (!path.has_class("area")) continue;
    const auto numbers = numbers_in(path.attributes.at("d"));
    found.push_back({std::min(numbers[0], numbers[2]), std::max(numbers[0], numbers[2])});
  }
  return found;
}

TEST_CASE("bars are as long as their values, from one zero") {
  const auto bars = lengths(bars_of({{"a", 50, {}, "50"}, {"b", 100, {}, "100"}}));
  REQUIRE(bars.size() == 2);
  CHECK(bars[0].low == bars[1].low);
  CHECK(bars[1].high - bars[1].low == doctest::Approx(2 * (bars[0].high - bars[0].low)));
}

TEST_CASE("a bar below zero ends where a bar above zero begins") {
  const auto bars = lengths(bars_of({{"a", 30, {}, "30"}, {"b", -60, {}, "-60"}}));
  REQUIRE(bars.size() == 2);
  CHECK(bars[1].high == bars[0].low);
  CHECK(bars[1].high - bars[1].low == doctest::Approx(2 * (bars[0].high - bars[0].low)));
}

TEST_CASE("the axis of bars far from zero begins at zero") {
  CHECK(texts_that_say(bars_of({{"a", 1001, {}, "1001"}, {"b", 1002, {}, "1002"}}), "0").size() ==
        1);
}

TEST_CASE("a whisker reaches from low to high, beyond the bar") {
  const std::string picture = bars_of({{"a", 50, Range{25, 100}, "25 to 100"}});
  const auto bar = lengths(picture).at(0);
  for (const Element& path : elements(picture, "path")) {
    if (!path.has_class("whisker")) continue;
    const auto numbers = numbers_in(path.attributes.at("d"));
    CHECK(numbers.front() == doctest::Approx(bar.low + (bar.high - bar.low) / 2).epsilon(0.001));
    CHECK(numbers[5] == doctest::Approx(bar.low + (bar.high - bar.low) * 2).epsilon(0.001));
  }
}

TEST_CASE("the axis tells its unit, and each bar its name and number") {
  const std::string picture = bars_of({{"small server", 5, {}, "EUR 5"}});
  CHECK(texts_that_say(picture, "EUR a year").size() == 1);
  CHECK(texts_that_say(picture, "small server").size() == 1);
  CHECK(texts_that_say(picture, "EUR 5").size() == 1);
}

TEST_CASE("bars of nothing, of one zero and of equal values are drawn") {
  CHECK(texts_that_say(bars_of({}), "0.0").size() == 1);
  CHECK(lengths(bars_of({{"a", 0, {}, "0"}})).size() == 1);
  CHECK(lengths(bars_of({{"a", 7, Range{7, 7}, "7"}, {"b", 7, {}, "7"}})).size() == 2);
  CHECK(lengths(bars_of({{"a", 1e290, {}, "much"}})).size() == 1);
}

TEST_CASE("fifteen names of 80 letters that differ in the last are told apart in full") {
  for (const Sample& sample : large_samples()) {
    if (sample.name != "many-bars") continue;
    CHECK(texts_with(sample.svg, "no. 001").size() == 1);
    CHECK(texts_with(sample.svg, "no. 015").size() == 1);
    CHECK(texts_with(sample.svg, "…").empty());
  }
}

}  // namespace
}  // namespace wattweek::chart
