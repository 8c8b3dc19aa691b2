#include "cli/new_figures.hpp"

#include "../support/about.hpp"
#include "program.hpp"

namespace wattweek::cli {
namespace {

using tests::about;

TEST_CASE("new figures: five watts a stream where only idle is known") {
  Readings readings;
  readings.idle_w = 13.5;
  const NewFigures figures = new_figures(readings);
  CHECK(figures.idle_w == 13.5);
  CHECK(figures.stream_w == 5);
  CHECK(figures.busy_w == 23.5);
}

TEST_CASE("new figures: idle is half of the watts in use where only these are known") {
  Readings readings;
  readings.busy_w = 30;
  const NewFigures figures = new_figures(readings);
  CHECK(figures.idle_w == 15);
  CHECK(figures.stream_w == 7.5);
  CHECK_FALSE(figures.is_idle_given);
}

TEST_CASE("new figures: idle and all streams together are the watts in use") {
  for (const double idle_w : {0.0, 0.1, 13.4, 1e6 / 3}) {
    for (const double more_w : {0.0, 0.3, 15.7, 1e5 / 7}) {
      Readings readings;
      readings.idle_w = idle_w;
      readings.busy_w = idle_w + more_w;
      const NewFigures figures = new_figures(readings);
      CHECK(figures.idle_w + kStreams * figures.stream_w == about(idle_w + more_w));
    }
  }
}

TEST_CASE("new figures: what is guessed in money is counted in the currency's coins") {
  struct Case {
    const char* currency;
    double price;
    double purchase;
  };
  for (const Case& each : {Case{"EUR", 0.3, 200}, Case{"JPY", 30, 20000}, Case{"KWD", 0.03, 20}}) {
    CAPTURE(each.currency);
    Readings readings;
    readings.currency = each.currency;
    const NewFigures figures = new_figures(readings);
    CHECK(figures.price_per_kwh == about(each.price));
    CHECK(figures.purchase == about(each.purchase));
  }
}

TEST_CASE("new figures: the night's price is below the day's, be this negative") {
  for (const double price : {0.3, 30.0, -0.1}) {
    Readings readings;
    readings.price_per_kwh = price;
    CHECK(new_figures(readings).night_price_per_kwh < price);
  }
}

TEST_CASE("new figures: numbers in TOML are floats") {
  CHECK(toml_number(13) == "13.0");
  CHECK(toml_number(13.5) == "13.5");
  CHECK(toml_number(-0.0) == "0.0");
  CHECK(toml_number(1e9) == "1000000000.0");
  CHECK(toml_number(1e-7) == "1e-07");
}

TEST_CASE("new figures: texts in TOML are quoted, and nothing in them commands a terminal") {
  CHECK(toml_string("home") == "\"home\"");
  CHECK(toml_string("a \"b\" \\c") == "\"a \\\"b\\\" \\\\c\"");
  CHECK(toml_string("two\nlines\x1B\xFF") == "\"two\\\\x0Alines\\\\x1B\\\\xFF\"");
  CHECK(toml_string("k\xC3\xBC"
                    "che") ==
        "\"k\xC3\xBC"
        "che\"");
}

}  // namespace
}  // namespace wattweek::cli
