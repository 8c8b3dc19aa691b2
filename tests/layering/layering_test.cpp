// Reads every #include of the library and the program and holds it against ladder.hpp.

#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <optional>
#include <set>
#include <sstream>
#include <string>
#include <string_view>
#include <vector>

#include "ladder.hpp"

namespace fs = std::filesystem;

namespace wattweek::layering {
namespace {

const fs::path kRoot = WATTWEEK_SOURCE_DIR;

std::optional<Room> room_named(std::string_view name) {
  const auto found = std::find_if(kLadder.begin(), kLadder.end(),
                                  [&](const Room& room) { return room.name == name; });
  return found == kLadder.end() ? std::nullopt : std::optional(*found);
}

/// The room of `include/wattweek/<room>/...`, `src/<room>/...` or `wattweek/<room>/...`.
std::optional<Room> room_of(std::string_view path) {
  for (const std::string_view start : {"include/wattweek/", "src/", "wattweek/"}) {
    if (path.starts_with(start)) {
      path.remove_prefix(start.size());
      return room_named(path.substr(0, path.find('/')));
    }
  }
  return std::nullopt;
}

/// Why `room` may not include a header of `target`; empty where it may.
std::string ladder_problem(const Room& room, const Room& target) {
  const std::string both = std::string(room.name) + " may not include " + std::string(target.name);
  if (target.name == room.name) return "";
  if (target.level > room.level) return both + ", which is above it";
  if (target.level == room.level) return both + ", which is beside it";
  if (!target.only_for.empty() && target.only_for != room.name) {
    return both + ", which serves " + std::string(target.only_for) + " alone";
  }
  return "";
}

/// Why the file `path` may not include `header`, which is not ours; empty where it may.
std::string door_problem(std::string_view path, std::string_view header) {
  for (const Door& door : kDoors) {
    if (!header.starts_with(door.header)) continue;
    const bool open = std::any_of(door.files.begin(), door.files.end(),
                                  [&](std::string_view file) { return path.starts_with(file); });
    return open ? "" : std::string(header) + " does not enter here";
  }
  const bool standard = header.find_first_of("/.") == std::string_view::npos;
  return standard ? "" : std::string(header) + " has no door";
}

/// Why the file `path` may not have the line `#include <header>` or `#include "header"`.
std::string include_problem(std::string_view path, std::string_view header, bool quoted) {
  if (header == "wattweek/version.hpp") return "";
  if (const auto target = room_of(header)) return ladder_problem(room_of(path).value(), *target);
  if (!quoted) return door_problem(path, header);
  const bool beside = header.find('/') == std::string_view::npos;
  const bool within_cli = path.starts_with("src/cli/") && header.starts_with("cli/");
  if (beside || within_cli) return "";
  return std::string(header) + " is neither a room's public header nor a file beside this one";
}

/// What follows `#include` on this line, with its quotes or brackets; empty on other lines.
std::string included_on(std::string line) {
  std::erase_if(line, [](char c) { return c == ' ' || c == '\t' || c == '\r'; });
  constexpr std::string_view kDirective = "#include";
  if (!line.starts_with(kDirective) || line.size() < kDirective.size() + 2) return "";
  const std::size_t opens = kDirective.size();
  const std::size_t closes = line.find(line[opens] == '<' ? '>' : '"', opens + 1);
  return line.substr(opens, closes - opens + 1);
}

/// A line `path:line: problem` for each #include of the file that breaks the rules.
std::string problems_in(const std::string& path, const std::string& text) {
  std::string problems;
  std::istringstream lines(text);
  std::string line;
  for (int number = 1; std::getline(lines, line); ++number) {
    const std::string included = included_on(line);
    if (included.empty()) continue;
    const std::string header = included.substr(1, included.size() - 2);
    const std::string problem = include_problem(path, header, included.front() == '"');
    if (problem.empty()) continue;
    problems += path + ":" + std::to_string(number) + ": " + problem + "\n";
  }
  return problems;
}

/// All C++ files of the rooms, relative to the root, in order.
std::vector<std::string> files_of_rooms() {
  std::vector<std::string> files;
  for (const char* top : {"include/wattweek", "src"}) {
    for (const auto& entry : fs::recursive_directory_iterator(kRoot / top)) {
      const auto extension = entry.path().extension();
      if (extension != ".hpp" && extension != ".cpp") continue;
      files.push_back(entry.path().lexically_relative(kRoot).generic_string());
    }
  }
  std::sort(files.begin(), files.end());
  return files;
}

std::string text_of(const std::string& path) {
  std::ifstream in(kRoot / path, std::ios::binary);
  REQUIRE_MESSAGE(in.good(), path);
  return {std::istreambuf_iterator<char>(in), {}};
}

/// The words of the CMakeLists.txt that lists the sources and headers of a file's room.
std::set<std::string> listed_in_room(const std::string& path) {
  const auto room = room_of(path);
  REQUIRE_MESSAGE(room.has_value(), path);
  std::string list = text_of("src/" + std::string(room->name) + "/CMakeLists.txt");
  std::replace(list.begin(), list.end(), ')', ' ');
  std::istringstream words(list);
  return {std::istream_iterator<std::string>(words), {}};
}

TEST_CASE("every include of the library and the program goes down the ladder") {
  std::string problems;
  for (const std::string& path : files_of_rooms()) problems += problems_in(path, text_of(path));
  CHECK(problems == "");
}

TEST_CASE("every file of the house is in a room of the ladder and no room is empty") {
  std::set<std::string_view> lived_in;
  for (const std::string& path : files_of_rooms()) {
    const auto room = room_of(path);
    REQUIRE_MESSAGE(room.has_value(), path);
    lived_in.insert(room->name);
  }
  CHECK(lived_in.size() == kLadder.size());
}

TEST_CASE("every public header and every source is in the list of its room") {
  std::string forgotten;
  for (const std::string& path : files_of_rooms()) {
    const bool is_public = path.starts_with("include/");
    const bool is_source = path.ends_with(".cpp") && path != "src/cli/main.cpp";
    const std::string name = fs::path(path).filename().string();
    if ((is_public || is_source) && listed_in_room(path).count(name) == 0) forgotten += path + "\n";
  }
  CHECK(forgotten == "");
}

TEST_CASE("an include that goes up, sideways or past the door of read is reported with its line") {
  CHECK(problems_in("src/model/a.cpp", "\n#include \"wattweek/calendar/fold.hpp\"\n") ==
        "src/model/a.cpp:2: model may not include calendar, which is above it\n");
  CHECK(problems_in("include/wattweek/power/a.hpp", "#include <wattweek/read/read.hpp>") ==
        "include/wattweek/power/a.hpp:1: power may not include read, which is beside it\n");
  CHECK(problems_in("src/report/a.cpp", "#include \"wattweek/read/read.hpp\"") ==
        "src/report/a.cpp:1: report may not include read, which serves cli alone\n");
}

TEST_CASE("a library that enters by another door than its own is reported") {
  CHECK(problems_in("include/wattweek/read/a.hpp", "#include <toml++/toml.h>") ==
        "include/wattweek/read/a.hpp:1: toml++/toml.h does not enter here\n");
  CHECK(problems_in("src/billing/a.cpp", "#include <iostream>") ==
        "src/billing/a.cpp:1: iostream does not enter here\n");
  CHECK(problems_in("src/decide/a.cpp", "#include <expat.h>") ==
        "src/decide/a.cpp:1: expat.h has no door\n");
}

TEST_CASE("a private header of another room cannot be reached") {
  CHECK(problems_in("src/energy/a.cpp", "#include \"../power/b.hpp\"") ==
        "src/energy/a.cpp:1: ../power/b.hpp is neither a room's public header nor a file beside "
        "this one\n");
}

TEST_CASE("an include that goes down, stays beside or uses its door is in order") {
  const char* text = R"(
#include <toml++/toml.h>
#include <vector>
#include "b.hpp"
#include "wattweek/calendar/zone.hpp"
#include "wattweek/version.hpp"
)";
  CHECK(problems_in("src/read/a.cpp", text) == "");
}

}  // namespace
}  // namespace wattweek::layering
