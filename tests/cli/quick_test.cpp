#include <nlohmann/json.hpp>

#include "../support/about.hpp"
#include "program.hpp"

namespace wattweek::cli {
namespace {

using nlohmann::json;
using tests::about;

std::string error_of(const std::string& words) {
  const Run run = wattweek("quick " + words);
  CHECK(run.exit_code == 2);
  CHECK(run.out == "");
  return run.err;
}

TEST_CASE("quick: 13.5 W with five streams of 3.1 W four hours every evening") {
  // Common practice, no source: 13.5 W idle and 29 W with five streams; 140.89 kWh a year.
  const Run run = wattweek(
      "quick --idle 13.5 --busy 29 --busy-hours 4 --price 0.30 --currency EUR --format json");
  CHECK(run.err == "");
  const json got = json::parse(run.out);
  CHECK(got["format"] == "wattweek-quick-1");
  CHECK(got["energy_kwh"].get<double>() == about(140.89));
  CHECK(got["mean_w"].get<double>() == about(140890.0 / 8760));
  CHECK(got["cost"].get<double>() == about(42.267));
  CHECK(got["currency"] == "EUR");
  CHECK(got.size() == 5);
}

TEST_CASE("quick: the answer on one screen, with the caution that belongs to measuring") {
  CHECK(wattweek("quick --idle 13.5 --price 0.30 --currency EUR").out ==
        R"(13.5 W around the clock is 118.3 kWh in 365 days.
At 0.30 EUR per kWh that costs 35.48 EUR a year, 2.96 EUR a month.
1 W all year is 8.76 kWh and costs 2.63 EUR.

Bear in mind
Before a meter goes between plug and socket: shut down, mind its rated current,
chain no power strips, open nothing (docs/safety.md).
)");
  CHECK(wattweek("quick --idle 13.5 --price 30 --currency JPY").out ==
        R"(13.5 W around the clock is 118.3 kWh in 365 days.
At 30 JPY per kWh that costs 3548 JPY a year, 296 JPY a month.
1 W all year is 8.76 kWh and costs 263 JPY.

Bear in mind
Before a meter goes between plug and socket: shut down, mind its rated current,
chain no power strips, open nothing (docs/safety.md).
)");
}

TEST_CASE("quick: without a currency none is invented") {
  CHECK(json::parse(wattweek("quick --idle 10 --price 0.30 --format json").out)["currency"]
            .is_null());
  CHECK(wattweek("quick --idle 10 --price 0.30").out ==
        R"(10 W around the clock is 87.6 kWh in 365 days.
At 0.30 per kWh that costs 26.28 a year, 2.19 a month.
1 W all year is 8.76 kWh and costs 2.63.

Bear in mind
Before a meter goes between plug and socket: shut down, mind its rated current,
chain no power strips, open nothing (docs/safety.md).
)");
}

TEST_CASE("quick: a price that looks like cents is pointed out and reckoned as it stands") {
  const Run run = wattweek("quick --idle 10 --price 30 --currency EUR --format json");
  CHECK(run.exit_code == 0);
  CHECK(run.err ==
        "wattweek: note: a price of 30 per kWh looks like one in hundredths; write 0.3 if it "
        "is\n");
  CHECK(json::parse(run.out)["cost"].get<double>() == about(2628));
}

TEST_CASE("quick: figures out of their limits are refused with what is accepted") {
  CHECK(error_of("--idle -1 --price 0.3") ==
        "wattweek: error: --idle: found '-1', accepted is a number of watts, 0 to 1e9\n");
  CHECK(error_of("--idle 10 --busy 9 --busy-hours 3 --price 0.3") ==
        "wattweek: error: --busy: found '9', accepted is a number of watts, not below --idle (10),"
        " up to 1e9\n");
  CHECK(error_of("--idle 10 --busy 20 --busy-hours 25 --price 0.3") ==
        "wattweek: error: --busy-hours: found '25', accepted is a number of hours a day, 0 to "
        "24\n");
  CHECK(error_of("--idle 10 --price inf") ==
        "wattweek: error: --price: found 'inf', accepted is a price of a kWh, -1e9 to 1e9\n");
  CHECK(error_of("--idle 10 --price 0,30") ==
        "wattweek: error: --price: found '0,30', accepted is a price of a kWh, -1e9 to 1e9, with a"
        " decimal point\n");
}

TEST_CASE("quick: busy watts and busy hours go together") {
  const std::string message = "wattweek: error: quick: --busy and --busy-hours go together\n";
  CHECK(error_of("--idle 10 --busy 20 --price 0.3") == message);
  CHECK(error_of("--idle 10 --busy-hours 2 --price 0.3") == message);
}

TEST_CASE("quick: a currency is three capitals") {
  for (const std::string code : {"eur", "EURO", "E1R", "''"}) {
    const std::string shown = code == "''" ? "" : code;
    CHECK(error_of("--idle 10 --price 0.3 --currency " + code) ==
          "wattweek: error: --currency: found '" + shown +
              "', accepted are the three capitals of a currency, such as EUR\n");
  }
}

}  // namespace
}  // namespace wattweek::cli
