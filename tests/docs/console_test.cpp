// Every ```console block of the documents is run: after "$ " a command, then what it prints. A
// line of three dots stands for any lines that were left out.

#include <doctest/doctest.h>

#include <algorithm>
#include <set>

#include "../cli/program.hpp"
#include "toml_examples.hpp"

namespace wattweek::docs {
namespace {

namespace fs = std::filesystem;
using Lines = std::vector<std::string>;

struct Command {
  std::string command;
  Lines expected;
};

std::vector<Command> commands_of(const Block& block) {
  std::vector<Command> commands;
  for (const std::string& line : lines_of(block.text)) {
    if (line.substr(0, 2) == "$ ") {
      commands.push_back({line.substr(2), {}});
    } else {
      REQUIRE_MESSAGE(!commands.empty(), where(block));
      commands.back().expected.push_back(line);
    }
  }
  return commands;
}

// Do the lines from `g` on match the expected ones from `e` on?
bool matches(const Lines& expected, std::size_t e, const Lines& got, std::size_t g) {
  for (; e < expected.size(); ++e, ++g) {
    if (expected[e] == "...") {
      for (std::size_t next = g; next <= got.size(); ++next) {
        if (matches(expected, e + 1, got, next)) return true;
      }
      return false;
    }
    if (g == got.size() || expected[e] != got[g]) return false;
  }
  return g == got.size();
}

// What the document's commands write as a profile.
std::set<std::string> written_profiles(const std::string& document) {
  const std::string option = " --profile ";
  std::set<std::string> names;
  for (const Block& block : blocks(document)) {
    const std::size_t at = block.info == "console" ? block.text.find(option) : block.text.npos;
    if (at == block.text.npos) continue;
    const std::size_t begin = at + option.size();
    names.insert(block.text.substr(begin, block.text.find_first_of(" \n", begin) - begin));
  }
  return names;
}

// A folder with the document's named examples, except for what its commands write, the program
// where the source tree has it, and the example of the library.
void furnish(const cli::TemporaryFolder& folder, const std::string& document) {
  const std::set<std::string> written = written_profiles(document);
  for (const auto& [name, text] : named_files(document)) {
    if (written.count(name) == 0) folder.write(name, text);
  }
  fs::create_directory(folder.path() / "build");
  fs::create_symlink(WATTWEEK_PROGRAM, folder.path() / "build/wattweek");
  fs::create_symlink(WATTWEEK_LIBRARY_EXAMPLE, folder.path() / "assess");
  fs::create_symlink(WATTWEEK_SOURCE_DIR "/docs", folder.path() / "docs");
}

// A profile that a command wrote is the one that the document shows, below the line that names it.
void check_written(const cli::TemporaryFolder& folder, const std::string& document) {
  const auto shown = named_files(document);
  for (const std::string& name : written_profiles(document)) {
    const auto at = shown.find(name);
    if (at == shown.end()) continue;
    CHECK(at->second.substr(at->second.find('\n') + 1) == cli::text_of(folder.path() / name));
  }
}

/// A build that is slow enough says how far it is.
std::vector<std::string> without_progress(std::vector<std::string> lines) {
  const auto is_progress = [](const std::string& line) {
    return line.find("wattweek: reckoning ") == 0;
  };
  lines.erase(std::remove_if(lines.begin(), lines.end(), is_progress), lines.end());
  return lines;
}

TEST_CASE("documents: every command shown with its output prints that output") {
  int run = 0;
  for (const std::string& document : all_documents()) {
    const cli::TemporaryFolder folder;
    furnish(folder, document);
    for (const Block& block : blocks(document)) {
      if (block.info != "console") continue;
      for (const Command& each : commands_of(block)) {
        CAPTURE(where(block));
        CAPTURE(each.command);
        const cli::Run got = cli::shell(folder.path(), "{ " + each.command + "; } 2>&1");
        const std::vector<std::string> printed = without_progress(lines_of(got.out));
        CHECK_MESSAGE(matches(each.expected, 0, printed, 0), "it prints:\n" << got.out);
        ++run;
      }
    }
    check_written(folder, document);
  }
  CHECK(run > 5);
}

TEST_CASE("documents: a block with output left out matches whatever stands between") {
  CHECK(matches({"a", "...", "d"}, 0, {"a", "b", "c", "d"}, 0));
  CHECK(matches({"a", "..."}, 0, {"a"}, 0));
  CHECK_FALSE(matches({"a", "...", "d"}, 0, {"a", "b", "c"}, 0));
  CHECK_FALSE(matches({"a"}, 0, {"a", "b"}, 0));
}

}  // namespace
}  // namespace wattweek::docs
