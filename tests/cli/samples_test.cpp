// Studies with right answers, reckoned independently: the program must give every figure of
// theirs to 1e-9 relative or 1e-6 absolute.

#include <algorithm>
#include <cmath>
#include <nlohmann/json.hpp>
#include <vector>

#include "program.hpp"

namespace wattweek::cli {
namespace {

namespace fs = std::filesystem;
using nlohmann::json;

bool close(double a, double b) {
  return std::fabs(a - b) <= std::max(1e-6, 1e-9 * std::max(std::fabs(a), std::fabs(b)));
}

/// Appends a line for everything in `expected` that `got` has not, or has with another value.
void compare(const json& expected, const json& got, const std::string& where,
             std::vector<std::string>& differences) {
  if (expected.is_number() && got.is_number()) {
    if (!close(expected.get<double>(), got.get<double>())) {
      differences.push_back(where + ": expected " + expected.dump() + ", got " + got.dump());
    }
  } else if (expected.is_object() && got.is_object()) {
    for (const auto& [key, value] : expected.items()) {
      const json none = "(missing)";
      compare(value, got.contains(key) ? got[key] : none, where + "." + key, differences);
    }
  } else if (expected.is_array() && got.is_array() && expected.size() == got.size()) {
    for (std::size_t i = 0; i < expected.size(); ++i) {
      compare(expected[i], got[i], where + "[" + std::to_string(i) + "]", differences);
    }
  } else if (expected != got) {
    differences.push_back(where + ": expected " + expected.dump().substr(0, 200) + ", got " +
                          got.dump().substr(0, 200));
  }
}

/// Objects that have members that the sample does not name; the notes are the one that may.
void list_strangers(const json& expected, const json& got, const std::string& where,
                    std::vector<std::string>& strangers) {
  if (expected.is_object() && got.is_object()) {
    for (const auto& [key, value] : got.items()) {
      if (!expected.contains(key)) {
        strangers.push_back(where + "." + key);
      } else {
        list_strangers(expected[key], value, where + "." + key, strangers);
      }
    }
  } else if (expected.is_array() && got.is_array()) {
    for (std::size_t i = 0; i < std::min(expected.size(), got.size()); ++i) {
      list_strangers(expected[i], got[i], where + "[" + std::to_string(i) + "]", strangers);
    }
  }
}

std::string first_lines(const std::vector<std::string>& lines) {
  std::string text;
  for (std::size_t i = 0; i < std::min<std::size_t>(lines.size(), 12); ++i) text += lines[i] + '\n';
  if (lines.size() > 12) text += "and " + std::to_string(lines.size() - 12) + " more\n";
  return text;
}

std::vector<fs::path> samples() {
  std::vector<fs::path> folders;
  for (const auto& entry : fs::directory_iterator(WATTWEEK_SOURCE_DIR "/tests/samples")) {
    if (fs::exists(entry.path() / "expected.json")) folders.push_back(entry.path());
  }
  std::sort(folders.begin(), folders.end());
  return folders;
}

TEST_CASE("samples: every figure of every sample study comes out right") {
  REQUIRE(samples().size() >= 11);
  for (const fs::path& folder : samples()) {
    CAPTURE(folder.filename().string());
    const Run run = shell(folder, "wattweek compare study.toml --format json");
    CHECK(run.err == "");
    CHECK(run.exit_code == 0);
    if (run.exit_code != 0) continue;
    const json got = json::parse(run.out);
    const json expected = json::parse(text_of(folder / "expected.json"));
    std::vector<std::string> differences;
    compare(expected, got, "", differences);
    CHECK(first_lines(differences) == "");
    std::vector<std::string> strangers;
    list_strangers(expected, got, "", strangers);
    CHECK(strangers == std::vector<std::string>{".notes"});
  }
}

TEST_CASE("samples: estimate gives the same figures and compares nothing") {
  for (const fs::path& folder : samples()) {
    CAPTURE(folder.filename().string());
    json compared = json::parse(shell(folder, "wattweek compare study.toml --format json").out);
    const json estimated =
        json::parse(shell(folder, "wattweek estimate study.toml --format json").out);
    CHECK(compared.erase("comparison") == 1);
    CHECK(estimated == compared);
  }
}

TEST_CASE("samples: the worked example by hand gives 88.64 kWh and 29.2512") {
  // 104 evenings of two hours at weekends: 10 W * 8760 h + 5 W * 208 h = 88.64 kWh, of which
  // 1.04 kWh films; at 0.30 with 10 % tax 29.2512, of which films 0.3432.
  const TemporaryFolder folder;
  folder.write("study.toml",
               "time_zone = \"Etc/UTC\"\n"
               "start = 2027-01-01\n"
               "[tariff]\n"
               "currency = \"EUR\"\n"
               "tax = 0.10\n"
               "band = [{ name = \"all\", price = 0.30 }]\n"
               "[[workload]]\n"
               "id = \"film\"\n"
               "[[workload.use]]\n"
               "days = \"sat,sun\"\n"
               "hours = \"20:00-22:00\"\n"
               "units = 2\n"
               "share = 0.5\n"
               "[[candidate]]\n"
               "id = \"box\"\n"
               "[[candidate.device]]\n"
               "watts = { idle = 10 }\n"
               "increments = { film = 5.0 }\n");
  const Run run = shell(folder.path(), "wattweek estimate study.toml --format json");
  REQUIRE(run.err == "");
  const json candidate = json::parse(run.out)["candidates"][0];
  CHECK(close(candidate["energy_kwh"], 88.64));
  CHECK(close(candidate["cost"], 29.2512));
  CHECK(close(candidate["workloads"][0]["unit_hours"], 208));
  CHECK(close(candidate["workloads"][0]["cost"], 0.3432));
  CHECK(close(candidate["workloads"][0]["energy_kwh"], 1.04));
  CHECK(close(candidate["states"][3]["hours"], 104));
  CHECK(candidate["states"][3]["state"] == "active");
}

}  // namespace
}  // namespace wattweek::cli
