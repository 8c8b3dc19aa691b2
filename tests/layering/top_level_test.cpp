// The root of the project shows what the project is: nothing else may settle there.

#include <doctest/doctest.h>

#include <array>
#include <cstdio>
#include <filesystem>
#include <memory>
#include <set>
#include <string>

namespace fs = std::filesystem;

namespace {

const std::set<std::string> kAllowed = {
    "CMakeLists.txt", "CMakePresets.json", "DEVELOPERS.md", "LICENSE", "README.md", "bootstrap",
    "docs",           "include",           "profiles",      "src",     "tariffs",   "tests",
};

/// The first part of each path that git keeps; empty outside a git clone.
std::set<std::string> kept_by_git() {
  const std::string command = "git -C '" WATTWEEK_SOURCE_DIR "' ls-files 2>/dev/null";
  const std::unique_ptr<FILE, int (*)(FILE*)> git(popen(command.c_str(), "r"), pclose);
  std::set<std::string> names;
  std::array<char, 4096> line;
  while (git && std::fgets(line.data(), line.size(), git.get()) != nullptr) {
    const std::string path = line.data();
    names.insert(path.substr(0, path.find_first_of("/\n")));
  }
  return names;
}

/// What lies in the root of a source archive, the build folder aside.
std::set<std::string> lying_in_root() {
  std::set<std::string> names;
  for (const auto& entry : fs::directory_iterator(WATTWEEK_SOURCE_DIR)) {
    names.insert(entry.path().filename().string());
  }
  names.erase("build");
  return names;
}

}  // namespace

TEST_CASE("the top level holds the listed names, dot files and nothing else") {
  std::set<std::string> names = kept_by_git();
  if (names.empty()) names = lying_in_root();
  REQUIRE(names.count("CMakeLists.txt") == 1);

  std::string strangers;
  for (const std::string& name : names) {
    if (name.front() != '.' && kAllowed.count(name) == 0) strangers += name + "\n";
  }
  CHECK(strangers == "");
}
