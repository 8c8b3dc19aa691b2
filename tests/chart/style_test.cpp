#include <doctest/doctest.h>

#include <set>
#include <sstream>

#include "samples.hpp"
#include "svg_reading.hpp"
#include "wattweek/chart/bars.hpp"

namespace wattweek::chart {
namespace {

TEST_CASE("every rule of the style sheet keeps to the pictures of a page") {
  std::istringstream lines(style_sheet());
  std::string line;
  while (std::getline(lines, line)) {
    CAPTURE(line);
    const bool media = line == "@media screen and (prefers-color-scheme:dark){" || line == "}";
    if (media) continue;
    const std::string selectors = line.substr(0, line.find('{'));
    std::istringstream parts(selectors);
    for (std::string part; std::getline(parts, part, ',');) {
      CHECK(part.rfind(".ww-chart", 0) == 0);
    }
  }
}

TEST_CASE("every class that a picture uses has a rule") {
  const std::string sheet = style_sheet();
  for (const Sample& sample : samples()) {
    for (const Element& element : elements(sample.svg)) {
      const auto found = element.attributes.find("class");
      if (found == element.attributes.end() || element.name == "svg") continue;
      std::istringstream classes(found->second);
      for (std::string name; classes >> name;) {
        CAPTURE(name);
        const bool ruled = sheet.find("." + name + "{") != std::string::npos ||
                           sheet.find("." + name + ",") != std::string::npos;
        CHECK(ruled);
      }
    }
  }
}

TEST_CASE("the dark colours are for screens alone, so print is dark on light") {
  const std::string sheet = style_sheet();
  const std::size_t dark = sheet.find("@media screen and (prefers-color-scheme:dark){");
  REQUIRE(dark != std::string::npos);
  CHECK(sheet.find(".ww-chart .paper{fill:#ffffff}") < dark);
  CHECK(sheet.find(".ww-chart .paper{fill:#15181c}") > dark);
}

TEST_CASE("a picture in a page can leave style and heading to the page") {
  const Frame bare{"a", "Title", "Description", false, false};
  const std::string svg = chart::svg(Bars{bare, "EUR", {{"server", 3, {}, "EUR 3"}}});
  CHECK(svg.find("<style>") == std::string::npos);
  CHECK(texts_that_say(svg, "Title").empty());
  CHECK(svg.find("<title id=\"a-title\">Title</title>") != std::string::npos);
}

}  // namespace
}  // namespace wattweek::chart
