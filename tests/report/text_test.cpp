#include <doctest/doctest.h>

#include <sstream>

#include "../support/widest_line.hpp"
#include "fixture.hpp"
#include "wattweek/diag/printable.hpp"

namespace wattweek::report {
namespace {

using tests::widest_line;

TEST_CASE("text: candidates, where it goes, what is saved, notes and limits") {
  decide::Assessment all = with_horizon();
  all.notes = {note("skipped", "palm", "it does not offer films")};
  CHECK(text(study(), all, {}, Scope::compare, {}) == R"(Hall cupboard
2027-01-01 to 2027-12-31, 365 days, 8760 hours, Europe/Dublin
Electricity contract: Day and night, in EUR

                                 mean  a year  a month  purchase     5-year
                           kWh      W     EUR      EUR       EUR  cost* EUR
Rack server (baseline)  1000.0  114.2  300.00    25.00      0.00    1400.00
Palm-size box            100.0   11.4   30.00     2.50    300.00     420.00

* Purchase, electricity and later costs less resale, each at its present value.
Lowest cost over 5 years, all at present value: Palm-size box (420.00 EUR). Then
Rack server (980.00 EUR more). They do not serve the same: see the notes.

Rack server [rack]

                                   cost
                            kWh     EUR  in use
base: off, asleep, idle   800.0  270.00  8760 h, 91.3 W
Film streaming            200.0   30.00  760 stream-hours, 263.2 W each
together                 1000.0  300.00

Device-hours: 8000 idle, 760 active. Highest draw 60.0 W.

Palm-size box [palm]

                                 cost
                           kWh    EUR  in use
base: off, asleep, idle   80.0  27.00  8760 h, 9.1 W
Film streaming            20.0   3.00  760 stream-hours, 26.3 W each
together                 100.0  30.00

Device-hours: 8000 idle, 760 active. Highest draw 60.0 W.

When

price          rack    rack  palm   palm
band   hours    kWh     EUR   kWh    EUR
night   3285  500.0   75.00  50.0   7.50
day     5475  500.0  225.00  50.0  22.50

          rack    rack  palm   palm
month      kWh     EUR   kWh    EUR
2027-01  500.0  150.00  50.0  15.00
2027-02  500.0  150.00  50.0  15.00

What a little more costs
1 W all year is 8.76 kWh and costs -3.75 EUR.
The next kWh costs 0.18 EUR (night), 0.36 EUR (day), tax included.

Compared with Rack server
- Palm-size box uses 900.0 kWh less a year and costs 270.00 EUR less a year to
  run.
- It costs 300.00 EUR more to buy.
- The extra purchase is earned back in 13 months; with discounting, price rises
  and later costs in 15 months.
- Over 5 years, all at present value, it costs 420.00 EUR against 1400.00 EUR:
  980.00 EUR less.
- It stays ahead until every price per kWh has fallen to 0.222 times today's:
  0.04 EUR (night), 0.0799 EUR (day), tax included.

Notes
- palm: it does not offer films (skipped).

Bear in mind
- Own solar power, prices that change by the hour, demand charges, and what the
  heat does to heating and cooling are not in these figures.
- The highest watts are a modelled mean, not a figure for sizing a fuse, cable,
  timer plug or UPS: peaks lie above it. Local rules and licensed people decide
  there (docs/safety.md).
)");
}

TEST_CASE("text: no line is wider than the window, whatever the names") {
  model::Study named = study();
  named.title = std::string(150, 't');
  named.candidates[0].name = "a name of many words that goes on and on beyond every reasonable end";
  named.candidates[1].name = std::string(90, 'x');
  named.workloads[0].name = "caf\u00E9 " + std::string(80, 'y');
  for (const int columns : {40, 60, 80, 100}) {
    CAPTURE(columns);
    const std::string shown = text(named, with_horizon(), {}, Scope::compare, {columns, false});
    CHECK(widest_line(shown) <= static_cast<std::size_t>(columns));
    CHECK(widest_line(shown) > static_cast<std::size_t>(columns) * 3 / 4);
  }
}

TEST_CASE("text: a window too narrow for the table lists the figures below each name") {
  const std::string shown = text(study(), assessment(), {}, Scope::estimate, {40, false});
  CHECK(shown.find("Rack server\n  kWh: 1000.0\n  mean W: 114.2\n  a year EUR: 300.00\n") !=
        std::string::npos);
}

TEST_CASE("text: letters beyond ASCII count as one column each") {
  model::Study named = study();
  named.candidates[0].name = "\u00C4rmel\u00FCberhang";
  const std::string shown = text(named, assessment(), {}, Scope::estimate, {});
  CHECK(shown.find("\n\u00C4rmel\u00FCberhang  1000.0  114.2  300.00    25.00      0.00\n"
                   "Palm-size box   100.0") != std::string::npos);
}

TEST_CASE("text: wide letters and emoji take two columns each") {
  model::Study named = study();
  named.candidates[0].name = "\u5BB6\u306E\u68DA \U0001F5A5";
  const std::string shown = text(named, assessment(), {}, Scope::estimate, {});
  CHECK(shown.find("\n\u5BB6\u306E\u68DA \U0001F5A5      1000.0") != std::string::npos);
  CHECK(shown.find("\nPalm-size box   100.0") != std::string::npos);
}

TEST_CASE("text: a name from right to left stands as it is, and cannot turn the line around") {
  model::Study named = study();
  named.candidates[0].name = "\u05E9\u05E8\u05EA";
  named.candidates[1].name = "box\u202Egnp";
  const std::string shown = text(named, with_horizon(), {}, Scope::compare, {});
  CHECK(shown.find("\n\u05E9\u05E8\u05EA (baseline)") != std::string::npos);
  CHECK(shown.find("box\\xE2\\x80\\xAEgnp") != std::string::npos);
}

TEST_CASE("text: amounts have the digits that their currency has") {
  model::Study paid = study();
  const auto row = [&paid](const std::string& currency) {
    paid.tariff.currency = currency;
    decide::Assessment all = assessment();
    all.candidates[1].cost.cost = units::money(31);
    const std::string shown = text(paid, all, {}, Scope::estimate, {});
    const std::size_t at = shown.find("Palm-size box");
    return shown.substr(at, shown.find('\n', at) - at);
  };
  CHECK(row("JPY") == "Palm-size box   100.0   11.4      31        3       300");
  CHECK(row("EUR") == "Palm-size box   100.0   11.4   31.00     2.58    300.00");
  CHECK(row("KWD") == "Palm-size box   100.0   11.4   31.000    2.583   300.000");
}

TEST_CASE("text: a machine that is paid for drawing has a negative cost, and none costs 0") {
  decide::Assessment all = with_horizon();
  all.candidates[0].cost.cost = units::money(-12);
  all.candidates[1].cost.cost = units::money(-0.001);
  const std::string shown = text(study(), all, {}, Scope::estimate, {});
  CHECK(shown.find("Rack server    1000.0  114.2  -12.00    -1.00") != std::string::npos);
  CHECK(shown.find("Palm-size box   100.0   11.4    0.00     0.00") != std::string::npos);
}

TEST_CASE("text: a study without workloads shows its base alone") {
  model::Study idle = study();
  idle.workloads.clear();
  const std::string shown = text(idle, assessment(), {}, Scope::estimate, {});
  CHECK(shown.find("base: off, asleep, idle   800.0  270.00  8760 h, 91.3 W\n"
                   "together                 1000.0  300.00\n") != std::string::npos);
}

TEST_CASE("text: fifteen candidates fill no line beyond the window") {
  model::Study many = study();
  decide::Assessment all = with_horizon();
  all.candidates.resize(15, all.candidates.back());
  for (int c = 2; c < 15; ++c) {
    many.candidates.push_back(candidate("c" + std::to_string(c), std::string(80, 'n'), 0));
  }
  for (const int columns : {60, 80, 100}) {
    const std::string shown = text(many, all, {}, Scope::compare, {columns, false});
    CHECK(widest_line(shown) <= static_cast<std::size_t>(columns));
  }
}

TEST_CASE("text: a name cannot command the terminal") {
  model::Study named = study();
  named.title = "\x1b]0;owned\x07";
  named.candidates[0].name = "x\x1b[2Jy";
  named.workloads[0].name = "\u009Bz";
  named.tariff.name = "a\rb";
  const std::string shown = text(named, with_horizon(), {}, Scope::compare, {});
  for (const char c : shown) CHECK((c == '\n' || static_cast<unsigned char>(c) >= 0x20));
  CHECK(shown.find('\xC2') == std::string::npos);
  CHECK(shown.find("x\\x1B[2Jy") != std::string::npos);
}

TEST_CASE("text: a study of another length than a year says what it costs a year") {
  model::Study half = study();
  half.months = 6;
  const std::string shown = text(half, assessment(), {}, Scope::estimate, {});
  CHECK(shown.find("2027-01-01 to 2027-06-30") != std::string::npos);
  CHECK(shown.find("Rack server    1000.0  114.2  300.00  600.00    50.00      0.00\n") !=
        std::string::npos);
}

TEST_CASE("text: without purchases and horizon there is no column for them") {
  model::Study owned = study();
  owned.candidates[1].purchase = units::Money{};
  const std::string shown = text(owned, assessment(), {}, Scope::estimate, {});
  CHECK(shown.find("purchase") == std::string::npos);
  CHECK(shown.find("present value") == std::string::npos);
}

TEST_CASE("text: figures that are only a lower bound say so and a minimum bill has its line") {
  decide::Assessment all = assessment();
  all.candidates[0].lower_bound = true;
  all.candidates[0].cost.minimum_cost = units::money(-4.5);
  const std::string shown = text(study(), all, {}, Scope::estimate, {});
  CHECK(shown.find("Rack server (at least)  1000.0") != std::string::npos);
  CHECK(shown.find("minimum bill                      -4.50\n") != std::string::npos);
}

TEST_CASE("text: a workload that a candidate skips has no line there") {
  model::Study skipping = study();
  skipping.candidates[1].skips = {0};
  const std::string shown = text(skipping, assessment(), {}, Scope::estimate, {});
  const std::size_t first = shown.find("Film streaming");
  REQUIRE(first != std::string::npos);
  CHECK(shown.find("Film streaming", first + 1) == std::string::npos);
}

TEST_CASE("text: several devices are listed with their copies") {
  model::Study rack = study();
  model::Device second;
  second.name = "switch";
  second.count = 2;
  rack.candidates[0].devices.push_back(second);
  decide::Assessment all = assessment();
  all.candidates[0].ledger.devices.push_back({87.6, 12, 0});
  const std::string shown = text(rack, all, {}, Scope::estimate, {});
  CHECK(shown.find("device of rack  1000.0  114.2     60.0\n"
                   "2 x switch        87.6   10.0     12.0\n") != std::string::npos);
}

TEST_CASE("text: a study with one candidate compares nothing") {
  model::Study lonely = study();
  lonely.candidates.pop_back();
  decide::Assessment all = assessment();
  all.candidates.pop_back();
  all.rows.clear();
  CHECK(text(lonely, all, {}, Scope::compare, {}).find("There is no other candidate.\n") !=
        std::string::npos);
}

TEST_CASE("text: quick answers in sentences and says how to measure safely") {
  CHECK(quick_text({13.5, 29, 4, 0.3}, {140.8900, 16.0833, 42.267, 2.628}, "EUR", {}) ==
        R"(20 h of each day at 13.5 W and 4 h at 29 W, 16.1 W on average, is 140.9 kWh in
365 days.
At 0.30 EUR per kWh that costs 42.27 EUR a year, 3.52 EUR a month.
1 W all year is 8.76 kWh and costs 2.63 EUR.

Bear in mind
Before a meter goes between plug and socket: shut down, mind its rated current,
chain no power strips, open nothing (docs/safety.md).
)");
}

TEST_CASE("text: quick without a currency or use leaves both out") {
  const std::string shown = quick_text({13.5, 0, 0, 0.3}, {118.26, 13.5, 35.478, 2.628}, "", {});
  CHECK(shown.find("13.5 W around the clock is 118.3 kWh in 365 days.\n"
                   "At 0.30 per kWh that costs 35.48 a year, 2.96 a month.\n"
                   "1 W all year is 8.76 kWh and costs 2.63.\n") == 0);
}

}  // namespace
}  // namespace wattweek::report
