// A study under other tariffs than its own.

#include "support.hpp"

namespace wattweek::read_tests {
namespace {

const std::string kDear =
    "name = \"Dear\"\ncurrency = \"GBP\"\nband = [{ name = \"all\", price = 1 }]\n";
const std::string kGap =
    "currency = \"EUR\"\nband = [{ name = \"a\", price = 1, hours = \"00:00-12:00\" }]\n";
const std::string kHolidays = "holidays = [2027-03-17]\n";

TEST_CASE("other tariff: the study is read once for each, in their order, and is else the same") {
  const auto inputs = value_of(read_study_under(kStudy, {kDear, kTariff}));
  REQUIRE(inputs.size() == 2);
  CHECK(inputs[0].study.tariff.name == "Dear");
  CHECK(inputs[0].study.tariff.currency == "GBP");
  CHECK(inputs[1].study.tariff.name == "two");
  CHECK(inputs[1].study.tariff.bands.size() == 2);
  for (const read::StudyInput& input : inputs) {
    CHECK(input.study.title == "study");
    CHECK(input.study.candidates.size() == 2);
    CHECK(input.study.candidates[0].devices[0].profile ==
          inputs[0].study.candidates[0].devices[0].profile);
  }
}

TEST_CASE("other tariff: the study's holidays count unless the contract lists its own") {
  const auto inputs = value_of(
      read_study_under(kHolidays + kStudy, {kTariff, "holidays = [2027-12-25]\n" + kTariff,
                                            "holidays = []\nholidays_as = \"sun\"\n" + kTariff}));
  CHECK(inputs[0].study.tariff.holidays.dates == inputs[0].study.holidays.dates);
  CHECK(inputs[0].study.tariff.holidays.dates.size() == 1);
  REQUIRE(inputs[1].study.tariff.holidays.dates.size() == 1);
  CHECK(inputs[1].study.tariff.holidays.dates != inputs[1].study.holidays.dates);
  CHECK(inputs[2].study.tariff.holidays.dates.empty());
}

TEST_CASE("other tariff: the file of the study's own need not be there, nor be right") {
  for (const char* own : {"nowhere.toml", "dear.toml", "shipped:nothing"}) {
    CAPTURE(own);
    CHECK(value_of(read_study_under(edited(kStudy, "day.toml", own), {kDear})).size() == 1);
  }
}

std::string problems(const std::string& study, const std::vector<std::string>& tariffs) {
  const auto got = read_study_under(study, tariffs);
  CHECK(got.value.has_value() == got.problems.empty());
  return shown(got.problems);
}

TEST_CASE("other tariff: the study must still be whole, its own tariff too where it stands in it") {
  CHECK(problems(edited(kStudy, "tariff = \"day.toml\"\n", ""), {kDear}) ==
        "study.toml:1:1: error: tariff is missing: expected the path of a tariff file in quotes, "
        "\"shipped:NAME\", or a table [tariff]");
  CHECK(problems(edited(kStudy, "\"day.toml\"", "7"), {kDear}) ==
        "study.toml:4:10: error: tariff = 7: expected the path of a tariff file in quotes, "
        "\"shipped:NAME\", or a table [tariff]");
  CHECK(problems(edited(kStudy, "\"day.toml\"", "\"\""), {kDear}) ==
        "study.toml:4:10: error: tariff = \"\": the text is empty; expected the path of a tariff "
        "file in quotes, \"shipped:NAME\", or a table [tariff]");
  CHECK(problems(edited(kStudy, "\"day.toml\"",
                        "{ currency = \"EUR\", band = [{ name = \"a\", price = \"x\" }] }"),
                 {kDear}) ==
        "study.toml:4:60: error: tariff.band.price = \"x\": expected a number or a range [low, "
        "high], in currency per kWh");
}

TEST_CASE("other tariff: mistakes in all of them are told, each in its file, the study's first") {
  CHECK(problems(edited(kStudy, "share = 0.5", "share = 2"),
                 {"currency = \"EUR\"\n", kTariff, edited(kDear, "\"GBP\"", "\"gbp\"")}) ==
        "study.toml:9:9: error: workload.use.share = 2: expected a number or a range [low, high] "
        "from 0 to 1, as a fraction (0.05 is 5 %); write 0.02 for 2 %\n"
        "one.toml:1:1: error: band is missing: expected at least one [[band]] with name and price\n"
        "three.toml:2:12: error: currency = \"gbp\": expected the three capital letters of a "
        "currency (ISO 4217) in quotes, such as \"EUR\"; write \"GBP\"");
}

TEST_CASE("other tariff: a study that is no TOML does not hide the mistakes of the tariffs") {
  const std::string all = problems("title = \n", {"currency = \"EUR\"\n", kDear});
  CHECK(all.find("study.toml:1:") == 0);
  CHECK(all.find("one.toml:1:1: error: band is missing") != std::string::npos);
}

TEST_CASE("other tariff: a gap in the study's months is told at the bands of that tariff") {
  CHECK(problems(kStudy, {kDear, kGap}) ==
        "two.toml:2:8: error: band: no band holds at 2027-01-01 12:00 local time; expected one at "
        "every instant, such as a last band without days, hours, months and dates");
}

}  // namespace
}  // namespace wattweek::read_tests
