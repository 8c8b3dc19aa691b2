#include <nlohmann/json.hpp>

#include "../support/about.hpp"
#include "program.hpp"
#include "small_study.hpp"

namespace wattweek::cli {
namespace {

using nlohmann::json;
using tests::about;

std::string refusal(const TemporaryFolder& folder, const std::string& command) {
  const Run run = shell(folder.path(), command);
  CHECK(run.exit_code == 2);
  CHECK(run.out == "");
  return run.err;
}

json compared(const TemporaryFolder& folder, const std::string& options) {
  const Run run = shell(folder.path(), "wattweek compare study.toml --format json " + options);
  CHECK(run.err == "");
  REQUIRE(run.exit_code == 0);
  return json::parse(run.out);
}

TEST_CASE("study: --years stands for a horizon without rates where the study has none") {
  const TemporaryFolder folder;
  folder.write("study.toml", kSmallStudy);
  CHECK(compared(folder, "")["candidates"][0]["lifetime"].is_null());
  const json got = compared(folder, "--years 4");
  // 10 W * 8.76 kh * 0.25 = 21.90 a year; 30 W less saves 65.70 a year for 200 more.
  const json& lifetime = got["candidates"][1]["lifetime"];
  CHECK(lifetime["years"] == 4);
  CHECK(lifetime["present_cost"].get<double>() == about(200 + 4 * 21.90));
  CHECK(lifetime["total"] == lifetime["present_cost"]);
  CHECK(got["comparison"]["rows"][0]["payback_years"].get<double>() == about(200 / 65.70));
}

TEST_CASE("study: --years replaces the study's horizon and leaves its rates") {
  const TemporaryFolder folder;
  folder.write(
      "study.toml",
      small_study_with("[tariff]", "[finance]\nyears = 9\ndiscount_rate = 0.05\n[tariff]"));
  const json got = compared(folder, "--years 2");
  CHECK(got["candidates"][1]["lifetime"]["years"] == 2);
  CHECK(got["candidates"][1]["lifetime"]["present_cost"].get<double>() ==
        about(200 + 21.90 / 1.05 + 21.90 / 1.05 / 1.05));
}

TEST_CASE("study: a later cost beyond --years does not count") {
  const TemporaryFolder folder;
  folder.write("study.toml", kSmallStudy + "[[candidate.later]]\nyear = 3\ncost = 50\n");
  CHECK(compared(folder, "--years 2")["candidates"][1]["lifetime"]["later_cost"] == 0);
  CHECK(compared(folder, "--years 3")["candidates"][1]["lifetime"]["later_cost"] == 50);
}

TEST_CASE("study: --years needs a study of a year and a whole number up to 30") {
  const TemporaryFolder folder;
  folder.write("study.toml",
               small_study_with("start = 2027-01-01", "start = 2027-01-01\nmonths = 6"));
  CHECK(refusal(folder, "wattweek compare study.toml --years 5") ==
        "wattweek: error: --years: needs a study of 12 months, found months = 6 in study.toml\n");
  folder.write("study.toml", kSmallStudy);
  CHECK(refusal(folder, "wattweek estimate study.toml --years 31") ==
        "wattweek: error: --years: found '31', accepted is a whole number from 1 to 30\n");
}

TEST_CASE("study: --baseline replaces the study's") {
  const TemporaryFolder folder;
  folder.write("study.toml", kSmallStudy);
  CHECK(compared(folder, "")["comparison"]["baseline"] == "old");
  const json got = compared(folder, "--baseline new")["comparison"];
  CHECK(got["baseline"] == "new");
  CHECK(got["rows"][0]["id"] == "old");
  CHECK(got["rows"][0]["saves_kwh"].get<double>() == about(-262.8));
}

TEST_CASE("study: an unknown baseline names the nearest and all that there are") {
  const TemporaryFolder folder;
  folder.write("study.toml", kSmallStudy);
  CHECK(refusal(folder, "wattweek compare study.toml --baseline nwe") ==
        "wattweek: error: --baseline: no candidate 'nwe'; did you mean 'new'? Accepted are old, "
        "new\n");
}

TEST_CASE("study: estimate compares nothing and knows no baseline") {
  const TemporaryFolder folder;
  folder.write("study.toml", kSmallStudy);
  CHECK(refusal(folder, "wattweek estimate study.toml --baseline new") ==
        "wattweek: error: estimate: unknown option '--baseline'; accepted are --format, --years, "
        "--month, --help\n");
}

TEST_CASE("study: the text of a small comparison") {
  const TemporaryFolder folder;
  folder.write("study.toml", kSmallStudy);
  CHECK(shell(folder.path(), "wattweek compare study.toml --years 2").out ==
        R"(small
2027-01-01 to 2027-12-31, 365 days, 8760 hours, Etc/UTC
Electricity contract: small, in EUR

                       mean  a year  a month  purchase     2-year
                  kWh     W     EUR      EUR       EUR  cost* EUR
old (baseline)  350.4  40.0   87.60     7.30      0.00     175.20
new              87.6  10.0   21.90     1.83    200.00     243.80

* Purchase, electricity and later costs less resale, each at its present value.
Lowest cost over 2 years, all at present value: old (175.20 EUR). Then new
(68.60 EUR more).

old

                                 cost
                           kWh    EUR  in use
base: off, asleep, idle  350.4  87.60  8760 h, 40.0 W
together                 350.4  87.60

Device-hours: 8760 idle. Highest draw 40.0 W.

new

                                cost
                          kWh    EUR  in use
base: off, asleep, idle  87.6  21.90  8760 h, 10.0 W
together                 87.6  21.90

Device-hours: 8760 idle. Highest draw 10.0 W.

When

          old   old  new   new
month     kWh   EUR  kWh   EUR
2027-01  29.8  7.44  7.4  1.86
2027-02  26.9  6.72  6.7  1.68
2027-03  29.8  7.44  7.4  1.86
2027-04  28.8  7.20  7.2  1.80
2027-05  29.8  7.44  7.4  1.86
2027-06  28.8  7.20  7.2  1.80
2027-07  29.8  7.44  7.4  1.86
2027-08  29.8  7.44  7.4  1.86
2027-09  28.8  7.20  7.2  1.80
2027-10  29.8  7.44  7.4  1.86
2027-11  28.8  7.20  7.2  1.80
2027-12  29.8  7.44  7.4  1.86

old draws 40.0 W all week.
new draws 10.00 W all week.

What a little more costs
1 W all year is 8.76 kWh and costs 2.19 EUR.
The next kWh costs 0.25 EUR, tax included.

Compared with old
- new uses 262.8 kWh less a year and costs 65.70 EUR less a year to run.
- It costs 200.00 EUR more to buy.
- The extra purchase is earned back in 3 years; with discounting, price rises
  and later costs not within 2 years.
- Over 2 years, all at present value, it costs 243.80 EUR against 175.20 EUR:
  68.60 EUR more.
- It would draw level if every price per kWh rose to 1.522 times today's: 0.3805
  EUR, tax included.

Bear in mind
- Own solar power, prices that change by the hour, demand charges, and what the
  heat does to heating and cooling are not in these figures.
- The highest watts are a modelled mean, not a figure for sizing a fuse, cable,
  timer plug or UPS: peaks lie above it. Local rules and licensed people decide
  there (docs/safety.md).
)");
}

}  // namespace
}  // namespace wattweek::cli
