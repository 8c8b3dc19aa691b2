#include "wattweek/diag/diagnostic.hpp"

#include <doctest/doctest.h>

using namespace wattweek::diag;

namespace {

Place at(const std::string& file, int line, int column) {
  return {std::make_shared<const std::string>(file), line, column};
}

std::string shown(std::vector<Diagnostic> diagnostics) {
  sort_by_place(diagnostics);
  std::string text;
  for (const Diagnostic& diagnostic : diagnostics) text += to_text(diagnostic) + "\n";
  return text;
}

}  // namespace

TEST_CASE("a place is file, line and column") {
  CHECK(to_text(at("study.toml", 12, 3)) == "study.toml:12:3");
}

TEST_CASE("a diagnostic is one line: place, the word error, message") {
  CHECK(to_text(Diagnostic{at("a b.toml", 1, 1), "watts.idle = -1: expected more"}) ==
        "a b.toml:1:1: error: watts.idle = -1: expected more");
}

TEST_CASE("a diagnostic stays one line and cannot command a terminal") {
  CHECK(to_text(Diagnostic{at("x\n.toml", 1, 1),
                           "a\x1B[2J\nb\tc\x7F, \xC2\x9B"
                           "1m, gr\xC3\xB6\xC3\x9F"
                           "er"}) ==
        "x\\x0A.toml:1:1: error: a\\x1B[2J\\x0Ab\\x09c\\x7F, \\x9B1m, gr\xC3\xB6\xC3\x9F"
        "er");
}

TEST_CASE("diagnostics are in order of line, then column, then text") {
  CHECK(shown({{at("f", 2, 1), "c"},
               {at("f", 1, 9), "b"},
               {at("f", 1, 10), "z"},
               {at("f", 1, 10), "y"},
               {at("f", 1, 2), "a"}}) ==
        "f:1:2: error: a\n"
        "f:1:9: error: b\n"
        "f:1:10: error: y\n"
        "f:1:10: error: z\n"
        "f:2:1: error: c\n");
}

TEST_CASE("files stay in the order in which they were first mentioned") {
  CHECK(shown({{at("study", 9, 1), "a"},
               {at("box", 5, 1), "b"},
               {at("study", 3, 1), "c"},
               {at("all", 1, 1), "d"},
               {at("box", 1, 1), "e"}}) ==
        "study:3:1: error: c\n"
        "study:9:1: error: a\n"
        "box:1:1: error: e\n"
        "box:5:1: error: b\n"
        "all:1:1: error: d\n");
}

TEST_CASE("what is said twice is said once, what differs in anything is kept") {
  CHECK(shown({{at("f", 1, 1), "a"}, {at("f", 1, 1), "b"}, {at("f", 1, 1), "a"}}) ==
        "f:1:1: error: a\n"
        "f:1:1: error: b\n");
  CHECK(shown({{at("f", 1, 1), "a"}, {at("g", 1, 1), "a"}}) ==
        "f:1:1: error: a\n"
        "g:1:1: error: a\n");
}
