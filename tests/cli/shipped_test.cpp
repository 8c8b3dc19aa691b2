// What ships is the first thing that people copy.

#include <algorithm>
#include <vector>

#include "program.hpp"

namespace wattweek::cli {
namespace {

namespace fs = std::filesystem;

std::vector<fs::path> shipped(const std::string& folder) {
  std::vector<fs::path> files;
  for (const auto& entry : fs::directory_iterator(fs::path(WATTWEEK_SOURCE_DIR) / folder)) {
    files.push_back(entry.path());
  }
  std::sort(files.begin(), files.end());
  return files;
}

// The comment that a file opens with, as one line.
std::string opening(const fs::path& path) {
  std::istringstream lines(text_of(path));
  std::string whole;
  for (std::string line; std::getline(lines, line) && line.substr(0, 1) == "#";) {
    whole += line.substr(1);
  }
  return whole;
}

TEST_CASE("shipped: all profiles and tariffs pass the strictest check") {
  CHECK(shipped("profiles").size() >= 16);
  CHECK(shipped("tariffs").size() >= 12);
  for (const char* folder : {"profiles", "tariffs"}) {
    for (const fs::path& path : shipped(folder)) {
      CAPTURE(path);
      const Run run = wattweek("check --strict '" + path.string() + "'");
      CHECK(run.exit_code == 0);
      CHECK(run.err == "");
    }
  }
}

TEST_CASE(
    "shipped: every profile says where its watts come from, how old they are and where read") {
  for (const fs::path& path : shipped("profiles")) {
    CAPTURE(path);
    const std::string said = opening(path);
    const bool practice = said.find("Common practice, no source") != std::string::npos;
    CHECK((practice || said.find("Source: ") != std::string::npos));
    CHECK((said.find("2026)") != std::string::npos || said.find("Age: ") != std::string::npos));
    CHECK((!practice || said.find("All watts at the wall socket.") != std::string::npos));
  }
}

TEST_CASE("shipped: every tariff says that it is invented") {
  for (const fs::path& path : shipped("tariffs")) {
    CAPTURE(path);
    CHECK(opening(path).find("Invented: put your own contract's figures") != std::string::npos);
  }
}

TEST_CASE("shipped: a study may mix any profile with any tariff") {
  const TemporaryFolder folder;
  for (const fs::path& tariff : shipped("tariffs")) {
    std::string study =
        "time_zone = \"Europe/Dublin\"\nstart = 2027-01-01\n[household]\n"
        "kwh_per_year = 3500\n";
    study.insert(0, "tariff = \"shipped:" + tariff.stem().string() + "\"\n");
    for (const fs::path& profile : shipped("profiles")) {
      study += "[[candidate]]\nid = \"" + profile.stem().string() +
               "\"\n[[candidate.device]]\nprofile = \"shipped:" + profile.stem().string() + "\"\n";
    }
    folder.write("study.toml", study);
    CAPTURE(tariff);
    const Run run = shell(folder.path(), "wattweek compare study.toml");
    CHECK(run.exit_code == 0);
    CHECK(run.err == "");
  }
}

}  // namespace
}  // namespace wattweek::cli
