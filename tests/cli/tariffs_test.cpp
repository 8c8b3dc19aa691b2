// `compare` under other contracts than the study's own.

#include <algorithm>
#include <nlohmann/json.hpp>
#include <vector>

#include "program.hpp"
#include "small_study.hpp"

namespace wattweek::cli {
namespace {

using nlohmann::json;

const std::string kStudy = "docs/examples/ostrawick.toml";

std::vector<std::string> shipped_tariffs() {
  std::vector<std::string> names;
  for (const auto& entry : std::filesystem::directory_iterator(WATTWEEK_SOURCE_DIR "/tariffs")) {
    names.push_back("shipped:" + entry.path().stem().string());
  }
  return names;
}

std::string out_of(const std::string& words) {
  const Run run = wattweek(words);
  CAPTURE(run.err);
  CHECK(run.exit_code == 0);
  CHECK(run.err == "");
  return run.out;
}

std::string refusal(const TemporaryFolder& folder, const std::string& words) {
  const Run run = shell(folder.path(), "wattweek compare study.toml " + words);
  CHECK(run.exit_code == 2);
  CHECK(run.out == "");
  return run.err;
}

json under(const std::vector<std::string>& tariffs) {
  std::string words = "compare " + kStudy + " --format json";
  for (const std::string& tariff : tariffs) words += " --tariff " + tariff;
  return json::parse(out_of(words));
}

/// Holds a row against an ordinary comparison under that contract alone, to the last digit.
void check_row(const json& row, const json& alone, bool has_horizon) {
  CHECK(row["tariff"] == alone["tariff"]["name"]);
  CHECK(row["currency"] == alone["tariff"]["currency"]);
  CHECK(row["notes"] == alone["notes"]);
  REQUIRE(row["candidates"].size() == alone["candidates"].size());
  for (std::size_t c = 0; c < row["candidates"].size(); ++c) {
    const json& got = row["candidates"][c];
    const json& want = alone["candidates"][c];
    for (const char* member : {"id", "energy_kwh", "cost", "lower_bound"}) {
      CHECK(got[member] == want[member]);
    }
    CHECK(got["present_cost"] == (has_horizon ? want["lifetime"]["present_cost"] : json()));
  }
}

std::string cheapest(const json& candidates, const char* by) {
  json best = candidates[0];
  for (const json& each : candidates) best = each[by] < best[by] ? each : best;
  return best["id"];
}

TEST_CASE("tariffs: each row is the comparison under that contract alone") {
  const std::vector<std::string> tariffs = {"shipped:flat", "docs/examples/ostrawick-tariff.toml",
                                            "shipped:three-bands-seasons"};
  const json all = under(tariffs);
  CHECK(all["criterion"] == "present_cost");
  REQUIRE(all["rows"].size() == 3);
  for (std::size_t t = 0; t < tariffs.size(); ++t) {
    const json& row = all["rows"][t];
    check_row(row, under({tariffs[t]}), true);
    CHECK(row["best"] == cheapest(row["candidates"], "present_cost"));
  }
  CHECK(all["rows"][0]["best"] != all["rows"][2]["best"]);
}

TEST_CASE("tariffs: all that ship, in four currencies, are ranked by the year's cost alone") {
  const std::vector<std::string> tariffs = shipped_tariffs();
  REQUIRE(tariffs.size() >= 13);
  const json all = under(tariffs);
  CHECK(all["criterion"] == "year_cost");
  REQUIRE(all["rows"].size() == tariffs.size());
  for (std::size_t t = 0; t < tariffs.size(); ++t) {
    const json& row = all["rows"][t];
    check_row(row, under({tariffs[t]}), false);
    CHECK(row["best"] == cheapest(row["candidates"], "cost"));
  }
}

TEST_CASE("tariffs: one alone is an ordinary comparison under it, with all that goes with one") {
  const std::string own = " --tariff docs/examples/ostrawick-tariff.toml";
  for (const std::string options : {"", " --format json", " --format csv", " --format markdown",
                                    " --month 2027-02", " --draws 100 --format json"}) {
    CAPTURE(options);
    CHECK(out_of("compare " + kStudy + own + options) == out_of("compare " + kStudy + options));
  }
}

TEST_CASE("tariffs: paths are seen from the working directory, not from the study's folder") {
  const TemporaryFolder folder;
  folder.write("deep/study.toml", kSmallStudy);
  folder.write("t.toml", "currency = \"EUR\"\nband = [{ name = \"all\", price = 1 }]\n");
  folder.write("deep/t.toml", "currency = \"GBP\"\nband = [{ name = \"all\", price = 2 }]\n");
  const Run run = shell(folder.path(),
                        "wattweek compare deep/study.toml --format json --tariff t.toml "
                        "--tariff deep/t.toml --tariff shipped:flat");
  const json rows = json::parse(run.out)["rows"];
  CHECK(rows[0]["tariff"] == "t.toml");
  CHECK(rows[0]["currency"] == "EUR");
  CHECK(rows[1]["tariff"] == "deep/t.toml");
  CHECK(rows[1]["currency"] == "GBP");
  CHECK(rows[2]["tariff"] == "Flat");
}

TEST_CASE("tariffs: of the study's own tariff the file is not opened") {
  const TemporaryFolder folder;
  folder.write("study.toml",
               "time_zone = \"Etc/UTC\"\nstart = 2027-01-01\ntariff = \"nowhere.toml\"\n"
               "[[candidate]]\nid = \"box\"\n[[candidate.device]]\nwatts = { idle = 10 }\n");
  CHECK(shell(folder.path(), "wattweek compare study.toml --tariff shipped:flat").exit_code == 0);
  CHECK(shell(folder.path(), "wattweek compare study.toml").exit_code == 2);
}

TEST_CASE("tariffs: purchases that differ need a horizon, unless the currencies differ") {
  const TemporaryFolder folder;
  folder.write("study.toml", kSmallStudy);
  const std::string two = "--tariff shipped:flat --tariff shipped:two-rate-night";
  CHECK(refusal(folder, two) ==
        "wattweek: error: several --tariff: the purchases differ, so which candidate is best "
        "depends on how long it is kept; expected years under [finance] in study.toml, or --years "
        "N\n");
  const std::string compare = "wattweek compare study.toml ";
  CHECK(shell(folder.path(), compare + two + " --years 3").exit_code == 0);
  CHECK(shell(folder.path(), compare + two + " --tariff shipped:minimum-bill").exit_code == 0);
}

TEST_CASE("tariffs: what there is under one contract only is refused under several") {
  const TemporaryFolder folder;
  folder.write("study.toml", kSmallStudy);
  for (const std::string option : {"month 2027-01", "draws 100", "seed 1", "threads 1"}) {
    CHECK(refusal(folder, "--tariff shipped:flat --tariff shipped:flat --" + option) ==
          "wattweek: error: --" + option.substr(0, option.find(' ')) +
              ": goes with one --tariff at most, found 2\n");
  }
}

TEST_CASE("tariffs: mistakes in all files are told at once") {
  const TemporaryFolder folder;
  folder.write("study.toml", small_study_with("idle = 40", "idle = -40"));
  folder.write("euro.toml", "currency = \"euro\"\nband = [{ name = \"all\", price = 1 }]\n");
  folder.write("box.toml", "watts = { idle = 10 }\n");
  CHECK(refusal(folder, "--tariff gone.toml --tariff euro.toml --tariff box.toml --tariff ''") ==
        "wattweek: error: --tariff: 'gone.toml' does not exist\n"
        "wattweek: error: --tariff: an empty path names no file\n"
        "study.toml:10:18: error: candidate.device.watts.idle = -40: expected a number or a range "
        "[low, high], not below 0, in W\n"
        "euro.toml:1:12: error: currency = \"euro\": expected the three capital letters of a "
        "currency (ISO 4217) in quotes, such as \"EUR\"\n"
        "box.toml:1:1: error: found a profile; expected a tariff (it has a currency, and bands or "
        "blocks)\n");
}

TEST_CASE("tariffs: what only reckoning shows to be wrong is told once for all contracts") {
  const TemporaryFolder folder;
  folder.write("study.toml", kSmallStudy + "[household]\nkwh_per_year = 12\nincludes = \"old\"\n");
  const std::string told =
      refusal(folder, "--tariff shipped:flat --tariff shipped:two-rate-night --years 3");
  CHECK(told.find("study.toml:18:12: error: household.includes: in 2027-01 the candidate 'old'") ==
        0);
  CHECK(std::count(told.begin(), told.end(), '\n') == 1);
}

TEST_CASE("tariffs: the baseline is named beside its figures and must be one of the study's") {
  const std::string two =
      "compare " + kStudy + " --tariff shipped:flat --tariff shipped:two-rate-night";
  CHECK(out_of(two + " --baseline tower").find("- tower: Refitted office tower, the baseline, ") !=
        std::string::npos);
  CHECK(
      wattweek(two + " --baseline towr").err ==
      "wattweek: error: --baseline: no candidate 'towr'; did you mean 'tower'? Accepted are rack, "
      "palm, tower\n");
}

}  // namespace
}  // namespace wattweek::cli
