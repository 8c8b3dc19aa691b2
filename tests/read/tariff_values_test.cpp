#include "support.hpp"

using namespace wattweek;
using namespace wattweek::read_tests;
using namespace std::chrono_literals;
using units::money;
using units::per_kilowatt_hour;

TEST_CASE("a tariff holds what its file says") {
  const model::Tariff tariff = value_of(read_tariff(R"(name = "two prices"
currency = "EUR"
tax = [0.1, 0.2]
standing_per_day = 0.5
standing_per_month = -2
minimum_per_month = 10
holidays = [2027-12-25, 2027-01-01, 2027-12-25]
holidays_as = " SUN "
blocks_per = "day"
[[band]]
name = "night"
price = -0.05
when = [ { hours = "22:00-06:00" }, { days = "sun" } ]
[[band]]
name = "day"
price = [0.2, 0.3]
[[block]]
up_to = 5
price = 0.01
[[block]]
price = 0.02
)"));
  CHECK(tariff.name == "two prices");
  CHECK(tariff.currency == "EUR");
  CHECK(tariff.tax == units::Range<double>(0.1, 0.2));
  CHECK(tariff.standing_per_day == model::MoneyRange(money(0.5)));
  CHECK(tariff.standing_per_month == model::MoneyRange(money(-2)));
  CHECK(tariff.minimum_per_month == model::MoneyRange(money(10)));
  CHECK(tariff.blocks_per == model::BlocksPer::day);
  REQUIRE(tariff.bands.size() == 2);
  CHECK(tariff.bands[0].name == "night");
  CHECK(tariff.bands[0].price == model::PriceRange(per_kilowatt_hour(-0.05)));
  CHECK(tariff.bands[0].when.size() == 2);
  CHECK(diag::to_text(tariff.bands[0].place) == "day.toml:10:1");
  CHECK(diag::to_text(tariff.bands[0].price_place) == "day.toml:12:9");
  CHECK(diag::to_text(tariff.bands[0].when[1].place) == "day.toml:13:37");
  CHECK(tariff.bands[1].price == model::PriceRange(per_kilowatt_hour(0.2), per_kilowatt_hour(0.3)));
  REQUIRE(tariff.blocks.size() == 2);
  CHECK(tariff.blocks[0].up_to_kwh == 5.0);
  CHECK(tariff.blocks[1].price == model::PriceRange(per_kilowatt_hour(0.02)));
  CHECK_FALSE(tariff.blocks[1].up_to_kwh.has_value());
}

TEST_CASE("holidays are sorted, each once, with the place of its first mention") {
  const model::Tariff tariff = value_of(
      read_tariff(edited(kTariff, "tax = 0.2", "holidays = [2027-12-25, 2027-01-01, 2027-12-25]")));
  CHECK(tariff.has_own_holidays);
  CHECK(tariff.holidays.dates == std::vector<model::CivilDay>{model::CivilDay(2027y / 1 / 1),
                                                              model::CivilDay(2027y / 12 / 25)});
  REQUIRE(tariff.holidays.places.size() == 2);
  CHECK(diag::to_text(tariff.holidays.places[0]) == "day.toml:2:25");
  CHECK(diag::to_text(tariff.holidays.places[1]) == "day.toml:2:13");
  CHECK_FALSE(tariff.holidays.count_as.has_value());
}

TEST_CASE("a tariff needs a currency and one band, and is named like its file") {
  const model::Tariff tariff =
      value_of(read_tariff("currency = \"GBP\"\n[[band]]\nname = \"all\"\nprice = 0.3\n"));
  CHECK(tariff.name == "day");
  CHECK(tariff.tax == units::Range<double>(0));
  CHECK_FALSE(tariff.minimum_per_month.has_value());
  CHECK_FALSE(tariff.has_own_holidays);
  CHECK(tariff.blocks_per == model::BlocksPer::month);
}

TEST_CASE("a tariff of blocks alone has one band at no price that always holds") {
  const model::Tariff tariff =
      value_of(read_tariff("currency = \"EUR\"\n[[block]]\nprice = 0.3\n"));
  REQUIRE(tariff.bands.size() == 1);
  CHECK(tariff.bands[0].name == "all");
  CHECK(tariff.bands[0].price == model::PriceRange(per_kilowatt_hour(0)));
  REQUIRE(tariff.bands[0].when.size() == 1);
  CHECK(tariff.bands[0].when[0].days == model::kEveryDay);
}

TEST_CASE("the blocks of each month are a ladder of their own, and a month may have none") {
  const model::Tariff tariff = value_of(read_tariff(R"(currency = "EUR"
[[band]]
name = "all"
price = 0
[[block]]
months = "oct-mar"
up_to = 250
price = 0.1
[[block]]
months = "apr-aug"
up_to = 100
price = 0.2
[[block]]
months = "oct-aug"
price = 0.3
)"));
  CHECK(tariff.blocks.size() == 3);
  CHECK_FALSE(tariff.blocks[2].months.test(8));
}

TEST_CASE("bands that cover every weekday, hour and month between them leave no gap") {
  const std::string seasons = R"(currency = "EUR"
[[band]]
name = "summer"
price = 0.1
months = "apr-sep"
[[band]]
name = "winter weekend"
price = 0.2
days = "sat,sun"
months = "oct-mar"
[[band]]
name = "winter day"
price = 0.3
days = "mon-fri"
hours = "06:00-22:00"
months = "oct-mar"
[[band]]
name = "winter night"
price = 0.2
hours = "00:00-06:00,22:00-24:00"
)";
  CHECK(shown(read_tariff(seasons).problems) == "");
}

TEST_CASE("a band over midnight covers the early hours of the day after") {
  // Friday night ends on Saturday morning; the rest of the week is covered around it.
  const std::string text = R"(currency = "EUR"
[[band]]
name = "friday night"
price = 0.1
days = "fri"
hours = "22:00-06:00"
[[band]]
name = "saturday"
price = 0.2
days = "sat"
hours = "06:00-24:00"
[[band]]
name = "friday"
price = 0.2
days = "fri"
hours = "00:00-22:00"
[[band]]
name = "other days"
price = 0.3
days = "sun-thu"
)";
  CHECK(shown(read_tariff(text).problems) == "");
}

TEST_CASE("a tax above 1 is unusual and allowed") {
  CHECK(value_of(read_tariff(edited(kTariff, "tax = 0.2", "tax = 23"))).tax ==
        units::Range<double>(23));
}

TEST_CASE("a tariff for some dates only is looked at between these") {
  const std::string text = R"(currency = "EUR"
[[band]]
name = "old"
price = 0.1
dates = "2026-06-15..2027-06-30"
[[band]]
name = "new"
price = 0.2
dates = "2027-07-01..2028-01-20"
)";
  CHECK(shown(read_tariff(text).problems) == "");
}
