#include <doctest/doctest.h>

#include "../support/study_text.hpp"
#include "sections.hpp"

namespace wattweek::report {
namespace {

// The section of a whole study with one box, as text.
std::string margins_text(const std::string& before_the_candidate,
                         const std::string& time = tests::kYear2027) {
  const tests::Reckoned got = tests::reckon(time + before_the_candidate + R"(
[[candidate]]
id = "box"
[[candidate.device]]
watts = { idle = 10 }
)");
  return lay_out_text({"", {margins(shown(got.study, got.result))}}, {100, false});
}

TEST_CASE("margins: one price for all hours") {
  CHECK(margins_text(tests::kFlatTariff) == R"(What a little more costs
1 W all year is 8.76 kWh and costs 2.63 EUR.
The next kWh costs 0.30 EUR, tax included.
)");
}

TEST_CASE("margins: every band has its price, tax included") {
  CHECK(margins_text(R"(
[tariff]
currency = "EUR"
tax = 0.05
band = [ { name = "night", price = 0.2, hours = "22:00-06:00" }, { name = "day", price = 0.3115 } ]
)") == R"(What a little more costs
1 W all year is 8.76 kWh and costs 2.52 EUR.
The next kWh costs 0.21 EUR (night), 0.3271 EUR (day), tax included.
)");
}

TEST_CASE("margins: every block has its price in every band, with the months in which it holds") {
  CHECK(margins_text(R"(
[household]
kwh_per_year = 1200
[tariff]
currency = "JPY"
blocks_per = "day"
minimum_per_month = 300
band = [ { name = "night", price = 10, hours = "22:00-06:00" }, { name = "day", price = 20 } ]
[[tariff.block]]
up_to = 2
price = 5.5
months = "nov-feb"
[[tariff.block]]
price = 8
months = "nov-feb"
)") == R"(What a little more costs
1 W all year is 8.76 kWh and costs 169 JPY.
The next kWh costs, tax included:
- up to 2 kWh a day, nov to feb: 15.5 JPY (night), 25.5 JPY (day)
- beyond that, nov to feb: 18 JPY (night), 28 JPY (day)
- mar to oct: 10 JPY (night), 20 JPY (day)
In a month that stays below the minimum bill it costs nothing.
)");
}

TEST_CASE("margins: a study of a month does not speak of a year") {
  CHECK(margins_text(tests::kFlatTariff,
                     "time_zone = \"Etc/UTC\"\nstart = 2027-02-01\nmonths = 1\n") ==
        R"(What a little more costs
1 W all through the study is 0.67 kWh and costs 0.20 EUR.
The next kWh costs 0.30 EUR, tax included.
)");
}

}  // namespace
}  // namespace wattweek::report
