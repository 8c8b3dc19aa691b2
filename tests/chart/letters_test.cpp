#include "letters.hpp"

#include <doctest/doctest.h>

#include "ends.hpp"
#include "wattweek/diag/printable.hpp"

namespace wattweek::chart {
namespace {

std::string joined(const std::vector<std::string>& lines) {
  std::string all;
  for (const std::string& line : lines) all += (all.empty() ? "" : " ") + line;
  return all;
}

TEST_CASE("a name that fits is left alone") {
  CHECK(shortened("small server", 200, 14) == "small server");
  CHECK(wrapped("small server", {200, 200, 3}, 14) == std::vector<std::string>{"small server"});
  CHECK(wrapped("", {200, 200, 3}, 14) == std::vector<std::string>{""});
}

TEST_CASE("a name that is too long keeps its beginning and its end") {
  const std::string name = "a rack server with four drives and more memory, no. 17";
  const std::string cut = shortened(name, 200, 14);
  CHECK(text_width(cut, 14) <= 200);
  CHECK(cut.rfind("a rack server", 0) == 0);
  CHECK(cut.find("…") != std::string::npos);
  CHECK(cut.substr(cut.size() - 6) == "no. 17");
}

TEST_CASE("a name is broken at spaces and loses nothing where there is room") {
  const std::string name = "a rack server with four drives and more memory, number seventeen";
  const auto lines = wrapped(name, {120, 200, 9}, 14);
  CHECK(joined(lines) == name);
  CHECK(lines.size() >= 3);
  CHECK(text_width(lines[0], 14) <= 120);
  for (const std::string& line : lines) CHECK(text_width(line, 14) <= 200);
}

TEST_CASE("a word of 80 letters is broken within, between characters") {
  const std::string word(80, 'W');
  for (const std::string& line : wrapped(word, {300, 300, 9}, 14)) {
    CHECK(text_width(line, 14) <= 300);
  }
  std::string greek;
  for (int i = 0; i < 80; ++i) greek += "ω";
  for (const std::string& line : wrapped(greek, {100, 100, 4}, 14)) {
    CHECK(diag::printable(line) == line);  // Still UTF-8: no character was cut in two.
    CHECK(text_width(line, 14) <= 100);
  }
}

TEST_CASE("a room that is too small for anything ends all the same") {
  CHECK(wrapped("WWW", {1, 1, 9}, 14) == std::vector<std::string>{"W", "W", "W"});
  CHECK(wrapped("WWW", {1, 1, 2}, 14) == std::vector<std::string>{"W", "…"});
  CHECK(shortened("WWW", 1, 14) == "…");
}

TEST_CASE("names that are apart stay where they want to be") {
  CHECK(spread({10, 90, 50}, 17, {0, 100}) == std::vector<double>{10, 90, 50});
  CHECK(spread({}, 17, {0, 100}).empty());
}

TEST_CASE("names that want the same place share it evenly") {
  CHECK(spread({50, 50}, 10, {0, 100}) == std::vector<double>{45, 55});
  CHECK(spread({50, 50, 50}, 10, {0, 100}) == std::vector<double>{40, 50, 60});
  CHECK(spread({0, 0}, 10, {0, 100}) == std::vector<double>{0, 10});
  CHECK(spread({100, 100}, 10, {0, 100}) == std::vector<double>{90, 100});
}

TEST_CASE("fifteen names at one end stand one below the other, within what there is") {
  std::vector<double> wanted;
  for (int i = 0; i < 15; ++i) wanted.push_back(80 + i * 7 % 15);
  const auto placed = spread(wanted, 17, {0, 300});
  for (std::size_t i = 0; i < 15; ++i) {
    CHECK(placed[i] >= 0);
    CHECK(placed[i] <= 300);
    for (std::size_t j = 0; j < 15; ++j) {
      if (wanted[i] < wanted[j]) CHECK(placed[j] - placed[i] >= 17 - 1e-9);
    }
  }
}

}  // namespace
}  // namespace wattweek::chart
