#pragma once
// A study and the files that it names, all of them text.

#include <doctest/doctest.h>

#include <map>
#include <string>

#include "wattweek/decide/assessment.hpp"
#include "wattweek/read/read.hpp"

namespace wattweek::tests {

using Files = std::map<std::string, std::string>;

/// Reads a valid study called `study.toml` whose other files are known by path; `./box.toml` is
/// `box.toml` under another name, and what ships lies in a folder of its own.
inline read::StudyInput read_linked(const std::string& study, const Files& files) {
  read::Surroundings surroundings;
  surroundings.load = [&files](
                          const std::string& path, const std::string&,
                          read::ShippedKind) -> std::variant<read::SourceText, read::Unreadable> {
    std::string name = path;
    if (path.rfind("shipped:", 0) == 0) name = "/shipped/" + path.substr(8) + ".toml";
    const std::string identity = name.rfind("./", 0) == 0 ? name.substr(2) : name;
    const auto found = files.find(identity);
    if (found == files.end()) return read::Unreadable{"'" + path + "' does not exist"};
    return read::SourceText{name, identity, found->second};
  };
  surroundings.zone = calendar::zone_rules;
  auto got = read::study({"study.toml", "study.toml", study}, surroundings);
  for (const auto& problem : got.problems) FAIL_CHECK(diag::to_text(problem));
  REQUIRE(got.value.has_value());
  return std::move(*got.value);
}

inline decide::Assessment assessed(const read::StudyInput& input) {
  auto result = decide::assess(input.study, input.zone);
  REQUIRE(std::holds_alternative<decide::Assessment>(result));
  return std::get<decide::Assessment>(std::move(result));
}

}  // namespace wattweek::tests
