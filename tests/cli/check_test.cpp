#include <algorithm>

#include "program.hpp"
#include "small_study.hpp"

namespace wattweek::cli {
namespace {

const std::string kTariff = "currency = \"EUR\"\nband = [{ name = \"all\", price = 0.3 }]\n";
const std::string kProfile = "[watts]\nidle = 8\n[increments]\nfilm = 3\n";

TEST_CASE("check: each right file gets a line that says what it is") {
  const TemporaryFolder folder;
  folder.write("study.toml", kSmallStudy);
  folder.write("tariff.toml", kTariff);
  folder.write("profile.toml", kProfile);
  const Run run = shell(folder.path(), "wattweek check study.toml tariff.toml profile.toml");
  CHECK(run.exit_code == 0);
  CHECK(run.err == "");
  CHECK(run.out ==
        "study.toml: ok (study: 2 candidates, 0 workloads, 12 months)\n"
        "tariff.toml: ok (tariff: tariff, 1 price band, EUR)\n"
        "profile.toml: ok (profile: profile, 1 increment)\n");
}

TEST_CASE("check: one wrong file and no file is called right") {
  const TemporaryFolder folder;
  folder.write("tariff.toml", kTariff);
  folder.write("wrong.toml", "[watts]\nidle = -8\n");
  const Run run = shell(folder.path(), "wattweek check tariff.toml none.toml wrong.toml");
  CHECK(run.exit_code == 2);
  CHECK(run.out == "");
  CHECK(run.err ==
        "wattweek: error: 'none.toml' does not exist\n"
        "wrong.toml:2:8: error: watts.idle = -8: expected a number or a range [low, high], not "
        "below 0, in W\n");
}

TEST_CASE("check: all mistakes of all files are printed, of more than 50 only their number") {
  const TemporaryFolder folder;
  std::string many = "[watts]\nidle = 8\n[increments]\n";
  for (int i = 0; i < 73; ++i) many += "w" + std::to_string(i) + " = -1\n";
  folder.write("many.toml", many);
  const Run run = shell(folder.path(), "wattweek check many.toml");
  CHECK(run.exit_code == 2);
  CHECK(std::count(run.err.begin(), run.err.end(), '\n') == 51);
  CHECK(run.err.find("many.toml:4:6: error: ") == 0);
  CHECK(run.err.find("many.toml:53:7: error: ") != std::string::npos);
  CHECK(run.err.find("many.toml:54:") == std::string::npos);
  CHECK(run.err.find("\nwattweek: error: and 23 more errors\n") != std::string::npos);
}

TEST_CASE("check: a note is a warning with its place and code, and with --strict an error") {
  const TemporaryFolder folder;
  folder.write("study.toml", small_study_with("price = 0.25", "price = 25"));
  const std::string text =
      "a price of 25 EUR per kWh looks like one in hundredths; write 0.25 if it is "
      "[price-like-cents]\n";
  const Run run = shell(folder.path(), "wattweek check study.toml");
  CHECK(run.exit_code == 0);
  CHECK(run.out == "study.toml: ok (study: 2 candidates, 0 workloads, 12 months)\n");
  CHECK(run.err == "study.toml:6:33: note: " + text);
  const Run strict = shell(folder.path(), "wattweek check --strict study.toml");
  CHECK(strict.exit_code == 2);
  CHECK(strict.out == "");
  CHECK(strict.err == "study.toml:6:33: error: " + text);
}

TEST_CASE("check: a note about a candidate is placed where the candidate stands") {
  const TemporaryFolder folder;
  std::string text = small_study_with("[[candidate]]\nid = \"old\"",
                                      "[[workload]]\nid = \"film\"\nuse = [{}]\n"
                                      "[[candidate]]\nid = \"old\"\nskips = [\"film\"]");
  text += "increments = { film = 3 }\n";
  folder.write("study.toml", text);
  const Run run = shell(folder.path(), "wattweek check study.toml");
  CHECK(run.exit_code == 0);
  CHECK(run.err ==
        "study.toml:10:1: note: it does not offer 'film' (8760 unit-hours), so it is not like for "
        "like [skipped]\n");
}

TEST_CASE("check: a mistake that only the reckoning shows is found") {
  const TemporaryFolder folder;
  folder.write("study.toml",
               small_study_with("[tariff]",
                                "[household]\nkwh_per_year = 100\nincludes = \"old\"\n"
                                "[tariff]"));
  const Run run = shell(folder.path(), "wattweek check study.toml");
  CHECK(run.exit_code == 2);
  CHECK(run.out == "");
  CHECK(run.err.find("study.toml:6:") == 0);
  CHECK(shell(folder.path(), "wattweek estimate study.toml").err == run.err);
}

TEST_CASE("check: a file of no kind is told which keys tell") {
  const TemporaryFolder folder;
  folder.write("odd.toml", "colour = \"red\"\n");
  const Run run = shell(folder.path(), "wattweek check odd.toml");
  CHECK(run.exit_code == 2);
  CHECK(run.out == "");
  CHECK(run.err.find("odd.toml:1:1: error: ") == 0);
}

}  // namespace
}  // namespace wattweek::cli
