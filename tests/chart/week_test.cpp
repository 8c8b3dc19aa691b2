#include "wattweek/chart/week.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <map>
#include <set>

#include "samples.hpp"
#include "svg_reading.hpp"

namespace wattweek::chart {
namespace {

const Frame kFrame{"w", "Title", "Description", false, false};

WeekWatts even(double watts) {
  WeekWatts week{};
  for (auto& day : week) day.fill(watts);
  return week;
}

// The shade of each half-hour, read back from the picture's strokes: `[day][slot]`. The legend's
// strokes lie below all days.
std::map<std::size_t, std::map<std::size_t, std::string>> shades_of(const std::string& picture) {
  std::map<std::size_t, std::map<std::size_t, std::string>> shades;
  for (const Element& path : elements(picture, "path")) {
    if (!path.has_class("cells")) continue;
    const auto numbers = numbers_in(path.attributes.at("d"));
    for (std::size_t i = 0; i + 2 < numbers.size() && numbers[1] < 156; i += 3) {
      const auto day = static_cast<std::size_t>((numbers[i + 1] - 2) / 22);
      for (double x = numbers[i]; x < numbers[i] + numbers[i + 2]; x += 8) {
        const auto slot = static_cast<std::size_t>((x - 52) / 8);
        CHECK(shades[day].emplace(slot, path.attributes.at("class")).second);
      }
    }
  }
  return shades;
}

TEST_CASE("each half-hour of the week has exactly one shade") {
  for (const Sample& sample : samples()) {
    if (sample.name != "week" && sample.name != "restless-week") continue;
    const auto shades = shades_of(sample.svg);
    CHECK(shades.size() == 7);
    for (const auto& [day, slots] : shades) CHECK(slots.size() == 48);
  }
}

TEST_CASE("more watts are never a paler shade, and ends of the scale have the last shades") {
  WeekWatts week{};
  for (std::size_t day = 0; day < 7; ++day) {
    for (std::size_t slot = 0; slot < 48; ++slot) {
      week[day][slot] = static_cast<double>(day * 48 + slot) / 335 * 70;
    }
  }
  const auto shades = shades_of(svg(WeekMap{kFrame, week, {}}));
  std::string before = "w0 cells";
  for (const auto& [day, slots] : shades) {
    for (const auto& [slot, shade] : slots) {
      CHECK(shade >= before);
      before = shade;
    }
  }
  CHECK(shades.at(0).at(0) == "w0 cells");
  CHECK(before == "w6 cells");
}

TEST_CASE("a day tells its watts in words, from each time on") {
  WeekWatts week = even(22);
  week[0][17] = 40.25;
  week[0][18] = 41;
  const std::string picture = svg(WeekMap{kFrame, week, {}});
  CHECK(picture.find("<title>Monday, W from each time on: 00:00 22; 08:30 40.3 to 41; 09:30 22"
                     "</title>") != std::string::npos);
  CHECK(picture.find("<title>Sunday, W from each time on: 00:00 22</title>") != std::string::npos);
}

TEST_CASE("a given scale makes two weeks comparable, and watts beyond it keep to its ends") {
  const std::string low = svg(WeekMap{kFrame, even(12), Range{10, 80}});
  const std::string beyond = svg(WeekMap{kFrame, even(200), Range{10, 80}});
  CHECK(shades_of(low).at(0).at(0) == "w0 cells");
  CHECK(shades_of(beyond).at(0).at(0) == "w6 cells");
  CHECK(texts_that_say(low, "80").size() == 1);
  CHECK(texts_that_say(beyond, "80").size() == 1);
}

TEST_CASE("a rounding error below a mark does not scatter shades") {
  WeekWatts week = even(30);
  week[3][20] = std::nextafter(30, 0);
  const auto shades = shades_of(svg(WeekMap{kFrame, week, Range{10, 80}}));
  CHECK(shades.at(3).at(20) == shades.at(3).at(21));
}

TEST_CASE("an even week and a week of nothing are drawn in one shade") {
  for (const double watts : {0.0, 8.25, 4000.0}) {
    std::set<std::string> seen;
    for (const auto& [day, slots] : shades_of(svg(WeekMap{kFrame, even(watts), {}}))) {
      for (const auto& [slot, shade] : slots) seen.insert(shade);
    }
    CHECK(seen.size() == 1);
  }
}

TEST_CASE("a week takes few bytes, and not many where no two half-hours are alike") {
  for (const Sample& sample : samples()) {
    const std::size_t own = sample.svg.size() - style_sheet().size();
    if (sample.name == "week") CHECK(own < 3500);
    if (sample.name == "restless-week") CHECK(own < 9600);
  }
}

}  // namespace
}  // namespace wattweek::chart
