#include "cli/placeholder.hpp"

#include <doctest/doctest.h>

#include <string>

namespace wattweek::cli {
namespace {

const Command kAny = {"any", "", 0, 0, "", "", {}, {"text", "json"}, ""};
using Words = std::vector<std::string_view>;

TEST_CASE("placeholder: a name with an ending is a file, once or often") {
  for (const std::string spelt : {"STUDY.toml", "FILE.toml...", "[FILE.toml]", "[FILE.toml...]"}) {
    CAPTURE(spelt);
    CHECK(accepted_at(kAny, spelt).place == Place::file);
    CHECK(accepted_at(kAny, spelt).ending == ".toml");
  }
  CHECK(accepted_at(kAny, "LOG.csv").ending == ".csv");
  CHECK(accepted_at(kAny, "LOG").place == Place::file);
  CHECK(accepted_at(kAny, "LOG").ending == "");
}

TEST_CASE("placeholder: a folder, a command, a format and words of a fixed list") {
  CHECK(accepted_at(kAny, "DIR").place == Place::folder);
  CHECK(accepted_at(kAny, "[COMMAND]").place == Place::command);
  CHECK(accepted_at(kAny, "FORMAT").place == Place::word);
  CHECK(accepted_at(kAny, "FORMAT").words == Words{"text", "json"});
  CHECK(accepted_at(kAny, "low|mid|high").words == Words{"low", "mid", "high"});
}

TEST_CASE("placeholder: all else is free text") {
  for (const std::string spelt : {"", "N", "ID", "...", "[]", "A."}) {
    CAPTURE(spelt);
    CHECK(accepted_at(kAny, spelt).place == Place::free_text);
  }
}

TEST_CASE("placeholder: every operand of the table is one that the shells can offer") {
  for (const Command& command : commands()) {
    CAPTURE(command.name);
    CHECK(command.operands.find(' ') == std::string_view::npos);
    const bool is_known = accepted_at(command, command.operands).place != Place::free_text;
    CHECK(is_known == (command.most_operands > 0));
  }
}

}  // namespace
}  // namespace wattweek::cli
