#include "wattweek/decide/margin.hpp"

#include <doctest/doctest.h>

#include "../support/about.hpp"
#include "../support/study_text.hpp"

namespace wattweek::decide {
namespace {

using tests::about;
using tests::kFlatTariff;
using tests::kYear2027;
using tests::Reckoned;

constexpr const char* kBox = R"(
[[candidate]]
id = "box"
[[candidate.device]]
watts = { idle = 10 }
)";

double one_watt(const std::string& before_the_candidate) {
  const Reckoned got = tests::reckon(kYear2027 + before_the_candidate + kBox);
  return units::in_currency(cost_of_one_watt(got.result));
}

double next(const NextKwh& entry, std::size_t band) {
  return units::in_currency_per_kilowatt_hour(entry.by_band.at(band));
}

TEST_CASE("margin: 1 W all year is 8.76 kWh at the price of a kWh") {
  CHECK(one_watt(kFlatTariff) == about(8.76 * 0.30));
}

TEST_CASE("margin: 1 W pays each band's price for the band's hours, with tax") {
  CHECK(one_watt(R"(
[tariff]
currency = "EUR"
tax = 0.1
band = [ { name = "night", price = 0.2, hours = "22:00-06:00" }, { name = "day", price = 0.3 } ]
)") == about(0.001 * 365 * (8 * 0.2 + 16 * 0.3) * 1.1));
}

TEST_CASE("margin: on top of the household's own use 1 W pays the block that this reaches") {
  // 1,200 kWh a year are 100 a month and a little: far above 50, so the second block counts.
  CHECK(one_watt(R"(
[household]
kwh_per_year = 1200
[tariff]
currency = "EUR"
band = [ { name = "all", price = 0.2 } ]
[[tariff.block]]
up_to = 50
price = 0.0
[[tariff.block]]
price = 0.1
)") == about(8.76 * 0.3));
}

TEST_CASE("margin: where the minimum bill is not reached 1 W costs nothing") {
  CHECK(one_watt(R"(
[tariff]
currency = "EUR"
minimum_per_month = 20
band = [ { name = "all", price = 0.2 } ]
)") == about(0));
}

TEST_CASE("margin: without blocks the next kWh costs the band's price with tax") {
  const Reckoned got = tests::reckon(kYear2027 + R"(
[tariff]
currency = "EUR"
tax = 0.1
band = [ { name = "night", price = 0.2, hours = "22:00-06:00" }, { name = "day", price = 0.3 } ]
)" + kBox);
  const auto all = next_kwh(got.result.without.law);
  REQUIRE(all.size() == 1);
  CHECK(all[0].months.all());
  CHECK_FALSE(all[0].up_to.has_value());
  CHECK(next(all[0], 0) == about(0.22));
  CHECK(next(all[0], 1) == about(0.33));
}

TEST_CASE("margin: blocks by season stand with their months, each on top of the band's price") {
  const Reckoned got = tests::reckon(kYear2027 + R"(
[tariff]
currency = "EUR"
band = [ { name = "all", price = 0.1 } ]
[[tariff.block]]
up_to = 200
price = 0.05
months = "nov-feb"
[[tariff.block]]
price = 0.08
months = "nov-feb"
[[tariff.block]]
price = 0.02
months = "mar-oct"
)" + kBox);
  const auto all = next_kwh(got.result.without.law);
  REQUIRE(all.size() == 3);
  CHECK(all[0].months.to_ulong() == 0b110000000011);
  CHECK(units::in_kilowatt_hours(all[0].up_to.value()) == about(200));
  CHECK(next(all[0], 0) == about(0.15));
  CHECK(next(all[1], 0) == about(0.18));
  CHECK(all[2].months.to_ulong() == 0b001111111100);
  CHECK(next(all[2], 0) == about(0.12));
}

}  // namespace
}  // namespace wattweek::decide
