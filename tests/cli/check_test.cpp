#include "../support/week_text.hpp"
#include "program.hpp"
#include "small_study.hpp"

namespace wattweek::cli {
namespace {

const std::string kTariff = "currency = \"EUR\"\nband = [{ name = \"all\", price = 0.3 }]\n";
const std::string kProfile = "[watts]\nidle = 8\n[increments]\nfilm = 3\n";

const std::string kStudyLine = "study.toml: ok (study: 2 candidates, 0 workloads, 12 months)\n";

const std::string kTariffBlock =
    "tariff.toml: ok (tariff: tariff, 1 price band, EUR)\n"
    "\n"
    "What the next kWh costs, in EUR\n"
    "\n"
    "days       hours        band  price\n"
    "every day  00:00-24:00  all    0.30\n"
    "\n"
    "- Standing charge: none.\n"
    "- Minimum: none.\n"
    "- Tax: none is added.\n";

const std::string kProfileBlock =
    "profile.toml: ok (profile: profile, 1 increment)\n"
    "\n"
    "At the wall socket: 0 W off and 8 W idle.\n"
    "Idle all year, 8760 h, is 70.1 kWh. No contract is known here. At a plain price\n"
    "that costs 7.01 at 0.10 a kWh, 14.02 at 0.20, 21.02 at 0.30 and 28.03 at 0.40.\n"
    "1 W all year is 8.76 kWh: 0.88 at 0.10 a kWh, 2.63 at 0.30.\n"
    "\n"
    "What is added in use\n"
    "- film: 3 W for each unit.\n";

const std::string kMeasuring =
    "\n"
    "Before a meter goes between plug and socket: shut down, mind its rated current,\n"
    "chain no power strips, open nothing (docs/safety.md).\n";

TEST_CASE("check: a profile with a week is named by what it holds") {
  const TemporaryFolder folder;
  folder.write("box.toml", "[watts]\n" + tests::steady_week(10) + "\n");
  const Run run = shell(folder.path(), "wattweek check box.toml");
  CHECK(run.exit_code == 0);
  CHECK(run.err == "");
  CHECK(run.out.find("box.toml: ok (profile: box, watts by hour of the week)\n\n"
                     "At the wall socket: 0 W off, and 10 W in every hour of the week.\n") == 0);
}

TEST_CASE("check: each right file gets a block in the order given, cautions follow once") {
  const TemporaryFolder folder;
  folder.write("study.toml", kSmallStudy);
  folder.write("tariff.toml", kTariff);
  folder.write("profile.toml", kProfile);
  const Run run =
      shell(folder.path(), "wattweek check profile.toml study.toml study.toml tariff.toml");
  CHECK(run.exit_code == 0);
  CHECK(run.err == "");
  CHECK(run.out ==
        kProfileBlock + "\n" + kStudyLine + kStudyLine + "\n" + kTariffBlock + kMeasuring);
  CHECK(shell(folder.path(), "wattweek check profile.toml profile.toml").out ==
        kProfileBlock + "\n" + kProfileBlock + kMeasuring);
}

TEST_CASE("check: where no profile is checked there is no caution") {
  const TemporaryFolder folder;
  folder.write("study.toml", kSmallStudy);
  folder.write("tariff.toml", kTariff);
  CHECK(shell(folder.path(), "wattweek check study.toml").out == kStudyLine);
  CHECK(shell(folder.path(), "wattweek check --strict tariff.toml").out == kTariffBlock);
}

TEST_CASE("check: the highest watts are cautioned about where the profile gives them") {
  const TemporaryFolder folder;
  folder.write("profile.toml", "[watts]\nidle = 8\nbusy = 20\n");
  CHECK(shell(folder.path(), "wattweek check profile.toml").out ==
        "profile.toml: ok (profile: profile, 0 increments)\n"
        "\n"
        "At the wall socket: 0 W off, 8 W idle and 20 W at full load.\n"
        "Idle all year, 8760 h, is 70.1 kWh. No contract is known here. At a plain price\n"
        "that costs 7.01 at 0.10 a kWh, 14.02 at 0.20, 21.02 at 0.30 and 28.03 at 0.40.\n"
        "1 W all year is 8.76 kWh: 0.88 at 0.10 a kWh, 2.63 at 0.30.\n"
        "What uses add is not given: no increments.\n"
        "\n"
        "The highest watts are a modelled mean, not a figure for sizing a fuse, cable,\n"
        "timer plug or UPS: peaks lie above it. Local rules and licensed people decide\n"
        "there (docs/safety.md).\n" +
            kMeasuring.substr(1));
}

TEST_CASE("check: a gap on holidays alone is an error, and nothing is walked") {
  const TemporaryFolder folder;
  folder.write("tariff.toml", kTariff);
  folder.write(
      "gap.toml",
      "currency = \"EUR\"\nholidays = [2027-12-25, 2029-05-30]\nholidays_as = \"sun\"\n"
      "band = [ { name = \"early\", price = 0.1, days = \"sat\", hours = \"22:00-07:00\" },\n"
      "  { name = \"week\", price = 0.3, days = \"mon-sat\" },\n"
      "  { name = \"late\", price = 0.2, days = \"sun\", hours = \"07:00-24:00\" } ]\n");
  const Run run = shell(folder.path(), "wattweek check tariff.toml gap.toml");
  CHECK(run.exit_code == 2);
  CHECK(run.out == "");
  CHECK(run.err ==
        "gap.toml:4:8: error: band: no band holds at 2027-12-25 00:00 local time; expected one at "
        "every instant, such as a last band without days, hours, months and dates\n");
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
  CHECK(run.out == "");
  std::string expected;
  for (int i = 0; i < 50; ++i) {
    const std::string name = "w" + std::to_string(i);
    expected += "many.toml:" + std::to_string(4 + i) + ':' + std::to_string(name.size() + 4) +
                ": error: increments." + name +
                " = -1: expected a number or a range [low, high], not below 0, in W\n";
  }
  CHECK(run.err == expected + "wattweek: error: and 23 more errors\n");
}

TEST_CASE("check: a note is a warning with its place and code, and with --strict an error") {
  const TemporaryFolder folder;
  folder.write("study.toml", small_study_with("price = 0.25", "price = 25"));
  const std::string text =
      "a price of 25 EUR per kWh looks like one in hundredths; write 0.25 if it is "
      "[price-like-cents]\n";
  const Run run = shell(folder.path(), "wattweek check study.toml");
  CHECK(run.exit_code == 0);
  CHECK(run.out == kStudyLine);
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
  CHECK(run.err ==
        "study.toml:6:12: error: household.includes: in 2027-01 the candidate 'old' draws 29.76 "
        "kWh, but the household was metered with 8.49 kWh; expected a household that uses at "
        "least what the candidate draws\n");
  CHECK(shell(folder.path(), "wattweek estimate study.toml").err == run.err);
}

TEST_CASE("check: a file of no kind is told which keys tell") {
  const TemporaryFolder folder;
  folder.write("odd.toml", "colour = \"red\"\n");
  const Run run = shell(folder.path(), "wattweek check odd.toml");
  CHECK(run.exit_code == 2);
  CHECK(run.out == "");
  CHECK(run.err ==
        "odd.toml:1:1: error: no study, profile or tariff: expected a study with one of title, "
        "time_zone, start, months, tariff, baseline, household, carbon, finance, workload, away or "
        "candidate, a profile with one of capacity, watts, groups or increments, or a tariff with "
        "one of currency, tax, standing_per_day, standing_per_month, minimum_per_month, band, "
        "block or blocks_per\n");
}

}  // namespace
}  // namespace wattweek::cli
