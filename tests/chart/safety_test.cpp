// Every sample, the hostile ones among them, is well-formed, safe and readable.

#include <doctest/doctest.h>

#include <algorithm>
#include <random>
#include <regex>
#include <set>

#include "canvas.hpp"
#include "samples.hpp"
#include "svg_reading.hpp"
#include "wattweek/chart/bars.hpp"
#include "wattweek/chart/lines.hpp"
#include "wattweek/diag/printable.hpp"

namespace wattweek::chart {
namespace {

std::string without_style(const std::string& svg) {
  const std::size_t from = svg.find("<style>");
  const std::size_t to = svg.find("</style>") + 8;
  return svg.substr(0, from) + svg.substr(to);
}

std::string without_line_ends(std::string svg) {
  svg.erase(std::remove(svg.begin(), svg.end(), '\n'), svg.end());
  return svg;
}

TEST_CASE("a name from right to left stays in its place within a sentence") {
  CHECK(isolated("server 1") == "server 1");
  CHECK(isolated("\u05E9\u05E8\u05EA") == "\u2068\u05E9\u05E8\u05EA\u2069");
}

TEST_CASE("coordinates have one digit at most and no minus before zero") {
  CHECK(coordinate(-0.04) == "0");
  CHECK(coordinate(12.25) == "12.3");
  CHECK(coordinate(100) == "100");
}

TEST_CASE("every picture is well-formed and holds only what pictures are made of") {
  const std::set<std::string> known = {"svg",  "title", "desc",   "style", "path",
                                       "text", "g",     "circle", "defs",  "pattern"};
  for (const Sample& sample : samples()) {
    CAPTURE(sample.name);
    for (const Element& element : elements(sample.svg)) CHECK(known.count(element.name) == 1);
    CHECK(sample.svg.find("<script") == std::string::npos);
    CHECK(sample.svg.find("href") == std::string::npos);
  }
}

TEST_CASE("any bytes may be a name") {
  std::mt19937 random(4);
  for (int i = 0; i < 200; ++i) {
    std::string bytes;
    for (auto left = random() % 90; left > 0; --left) bytes += static_cast<char>(random() % 256);
    const Frame frame{"any", bytes, bytes, true, false};
    const Bars bars{frame, bytes, {{bytes, 1, {}, bytes.substr(0, 10)}}};
    const Lines lines{frame, bytes, bytes, true, {{bytes, {{0, 0, {}}}}}, {{0, 0, bytes}}};
    for (const std::string& picture : {svg(bars), svg(lines)}) {
      CHECK(elements(picture, "svg").size() == 1);
      CHECK(diag::printable(without_line_ends(picture)) == without_line_ends(picture));
    }
  }
}

TEST_CASE("every picture names itself for those who cannot see it") {
  for (const Sample& sample : samples()) {
    CAPTURE(sample.name);
    const auto all = elements(sample.svg);
    CHECK(all[0].attributes.at("role") == "img");
    CHECK(all[0].attributes.at("aria-labelledby") == all[1].attributes.at("id"));
    CHECK(all[0].attributes.at("aria-describedby") == all[2].attributes.at("id"));
    CHECK(all[1].name == "title");
    CHECK(all[2].name == "desc");
    CHECK(!all[1].text.empty());
    CHECK(!all[2].text.empty());
  }
}

TEST_CASE("ids begin with the picture's prefix, are unique, and all that are used exist") {
  for (const Sample& sample : samples()) {
    CAPTURE(sample.name);
    const auto all = elements(sample.svg);
    const std::string title = all[1].attributes.at("id");
    const std::string prefix = title.substr(0, title.rfind('-') + 1);
    std::set<std::string> ids;
    for (const Element& element : all) {
      const auto id = element.attributes.find("id");
      if (id == element.attributes.end()) continue;
      CHECK(id->second.rfind(prefix, 0) == 0);
      CHECK(ids.insert(id->second).second);
    }
    for (const Element& element : all) {
      const auto fill = element.attributes.find("fill");
      if (fill == element.attributes.end() || fill->second == "currentColor") continue;
      CHECK(ids.count(fill->second.substr(5, fill->second.size() - 6)) == 1);
    }
  }
}

TEST_CASE("no number of a picture is longer than needed, minus zero, or none") {
  const std::regex bad(R"(-0[^.0-9]|-0\.0\b|\d\.\d{3,}|\d\.\d0\D|\bnan\b|\binf\b)");
  for (const Sample& sample : samples()) {
    CAPTURE(sample.name);
    for (const Element& element : elements(without_style(sample.svg), "path")) {
      CHECK(!std::regex_search(element.attributes.at("d") + " ", bad));
    }
  }
}

TEST_CASE("no text begins outside its picture") {
  for (const Sample& sample : samples()) {
    CAPTURE(sample.name);
    const auto all = elements(sample.svg);
    const double height = all[0].number("height");
    for (const Element& text : elements(sample.svg, "text")) {
      CHECK(text.number("x") >= 0);
      CHECK(text.number("x") <= kWidth);
      CHECK(text.number("y") > 0);
      CHECK(text.number("y") < height);
    }
  }
}

}  // namespace
}  // namespace wattweek::chart
