// `new --list`: what ships.

#include <algorithm>
#include <sstream>
#include <vector>

#include "program.hpp"

namespace wattweek::cli {
namespace {

namespace fs = std::filesystem;

/// `shipped:NAME` of every file in a folder of the source tree, sorted.
std::vector<std::string> shipped(const std::string& folder) {
  std::vector<std::string> names;
  for (const auto& entry : fs::directory_iterator(fs::path(WATTWEEK_SOURCE_DIR) / folder)) {
    names.push_back("  shipped:" + entry.path().stem().string());
  }
  std::sort(names.begin(), names.end());
  return names;
}

std::vector<std::string> lines_with(const std::string& text, const std::string& beginning) {
  std::vector<std::string> found;
  std::istringstream lines(text);
  for (std::string line; std::getline(lines, line);) {
    if (line.substr(0, beginning.size()) == beginning) found.push_back(line);
  }
  return found;
}

TEST_CASE("new --list: names every profile and tariff that ships, in order") {
  const Run run = wattweek("new --list");
  CHECK(run.exit_code == 0);
  CHECK(run.err == "");
  const std::size_t tariffs = run.out.find("\n\nTariffs");
  REQUIRE(tariffs != std::string::npos);
  CHECK(lines_with(run.out.substr(0, tariffs), "  shipped:") == shipped("profiles"));
  CHECK(lines_with(run.out.substr(tariffs), "  shipped:") == shipped("tariffs"));
  CHECK(shipped("profiles").size() > 2);
}

TEST_CASE("new --list: fits 80 columns") {
  std::istringstream lines(wattweek("new --list").out);
  for (std::string line; std::getline(lines, line);) {
    CAPTURE(line);
    CHECK(line.size() <= 80);
  }
}

TEST_CASE("new --list: goes alone") {
  for (const std::string words : {"--list home", "--list --idle 3", "home --list --price 1"}) {
    const Run run = wattweek("new " + words);
    CHECK(run.exit_code == 2);
    CHECK(run.out == "");
    CHECK(run.err == "wattweek: error: new: --list goes alone\n");
  }
}

/// A copy of the program with shipped files of its own.
class Installed {
 public:
  Installed() {
    fs::create_directories(folder_.path() / "bin");
    fs::copy_file(WATTWEEK_PROGRAM, folder_.path() / "bin/wattweek");
  }
  void ship(const std::string& name, const std::string& text) {
    folder_.write("share/wattweek/" + name, text);
  }
  Run list() const { return shell(folder_.path(), "bin/wattweek new --list"); }
  std::string path_of(const std::string& name) const {
    return (folder_.path() / "share/wattweek" / name).string();
  }

 private:
  TemporaryFolder folder_;
};

constexpr const char* kFlat = "currency = \"EUR\"\nband = [{ name = \"all\", price = 0.3 }]\n";

TEST_CASE("new --list: a line on each, with its watts, or its currency and bands") {
  Installed program;
  program.ship(
      "profiles/b.toml",
      "name = \"b box\"\n[watts]\noff = [1, 1.5]\nsleep = 2\nidle = [76, 89]\nbusy = 140\n");
  program.ship("profiles/a.toml", "[watts]\nat_load = [48, 61, 85.5]\n");
  program.ship("tariffs/one.toml", kFlat);
  program.ship("tariffs/two.toml",
               "name = \"Two rates\"\ncurrency = \"USD\"\n"
               "band = [{ name = \"night\", price = 0.1, hours = \"22:00-06:00\" }, "
               "{ name = \"day\", price = 0.2 }]\nblock = [{ price = 0.01 }]\n");
  const Run run = program.list();
  CHECK(run.err == "");
  CHECK(run.out ==
        "Profiles, for profile = \"shipped:NAME\" in a study:\n"
        "  shipped:a\n"
        "      a: idle 48 W, busy 85.5 W\n"
        "  shipped:b\n"
        "      b box: idle 76 to 89 W, busy 140 W, asleep 2 W, off 1 to 1.5 W\n"
        "\n"
        "Tariffs, for tariff = \"shipped:NAME\" in a study:\n"
        "  shipped:one\n"
        "      one: EUR, 1 price band\n"
        "  shipped:two\n"
        "      Two rates: USD, 2 price bands, 1 block\n");
}

TEST_CASE("new --list: a program without its shipped files, or with a broken one, says so") {
  Installed program;
  program.ship("tariffs/one.toml", kFlat);
  Run run = program.list();
  CHECK(run.exit_code == 1);
  CHECK(run.out == "");
  CHECK(run.err == "wattweek: error: the folder of shipped profiles is missing\n");
  program.ship("profiles/a.toml", "[watts]\nidle = -1\n");
  run = program.list();
  CHECK(run.exit_code == 1);
  CHECK(run.out == "");
  CHECK(run.err == program.path_of("profiles/a.toml") +
                       ":2:8: error: watts.idle = -1: expected a number or a range [low, high], "
                       "not below 0, in W\n");
}

}  // namespace
}  // namespace wattweek::cli
