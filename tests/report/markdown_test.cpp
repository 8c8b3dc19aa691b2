#include <doctest/doctest.h>

#include "fixture.hpp"

namespace wattweek::report {
namespace {

TEST_CASE("markdown: tables, sentences and notes") {
  decide::Assessment all = with_horizon();
  all.notes = {note("skipped", "palm", "it does not offer films")};
  CHECK(markdown(study(), all, {}, Scope::compare) == R"(## Hall cupboard

2027-01-01 to 2027-12-31, 365 days, 8760 hours, Europe/Dublin

Electricity contract: Day and night, in EUR

| | kWh | mean W | a year EUR | a month EUR | purchase EUR | 5-year cost\* EUR |
| :-- | --: | --: | --: | --: | --: | --: |
| Rack server (baseline) | 1000.0 | 114.2 | 300.00 | 25.00 | 0.00 | 1400.00 |
| Palm-size box | 100.0 | 11.4 | 30.00 | 2.50 | 300.00 | 420.00 |

\* Purchase, electricity and later costs less resale, each at its present value.

Lowest cost over 5 years, all at present value: Palm-size box (420.00 EUR). Then Rack server (980.00 EUR more). They do not serve the same: see the notes.

### Rack server \[rack\]

| | kWh | cost EUR | in use |
| :-- | --: | --: | :-- |
| base: off, asleep, idle | 800.0 | 270.00 | 8760 h, 91.3 W |
| Film streaming | 200.0 | 30.00 | 760 stream-hours, 263.2 W each |
| together | 1000.0 | 300.00 | |

Device-hours: 8000 idle, 760 active. Highest draw 60.0 W.

### Palm-size box \[palm\]

| | kWh | cost EUR | in use |
| :-- | --: | --: | :-- |
| base: off, asleep, idle | 80.0 | 27.00 | 8760 h, 9.1 W |
| Film streaming | 20.0 | 3.00 | 760 stream-hours, 26.3 W each |
| together | 100.0 | 30.00 | |

Device-hours: 8000 idle, 760 active. Highest draw 60.0 W.

### When

| price band | hours | rack kWh | rack EUR | palm kWh | palm EUR |
| :-- | --: | --: | --: | --: | --: |
| night | 3285 | 500.0 | 75.00 | 50.0 | 7.50 |
| day | 5475 | 500.0 | 225.00 | 50.0 | 22.50 |

| month | rack kWh | rack EUR | palm kWh | palm EUR |
| :-- | --: | --: | --: | --: |
| 2027-01 | 500.0 | 150.00 | 50.0 | 15.00 |
| 2027-02 | 500.0 | 150.00 | 50.0 | 15.00 |

### What a little more costs

1 W all year is 8.76 kWh and costs -3.75 EUR.

The next kWh costs 0.18 EUR (night), 0.36 EUR (day), tax included.

### Compared with Rack server

- Palm-size box uses 900.0 kWh less a year and costs 270.00 EUR less a year to run.
- It costs 300.00 EUR more to buy.
- The extra purchase is earned back in 13 months; with discounting, price rises and later costs in 15 months.
- Over 5 years, all at present value, it costs 420.00 EUR against 1400.00 EUR: 980.00 EUR less.
- It stays ahead until every price per kWh has fallen to 0.222 times today's: 0.04 EUR (night), 0.0799 EUR (day), tax included.

### Notes

- palm: it does not offer films (skipped).

### Bear in mind

- Own solar power, prices that change by the hour, demand charges, and what the heat does to heating and cooling are not in these figures.
- The highest watts are a modelled mean, not a figure for sizing a fuse, cable, timer plug or UPS: peaks lie above it. Local rules and licensed people decide there (docs/safety.md).
)");
}

TEST_CASE("markdown: names cannot make markup or a new cell") {
  model::Study named = study();
  named.candidates[0].name = "a|b *c* <img src=x> [d](e) `f`\n# g";
  const std::string text = markdown(named, assessment(), {}, Scope::estimate);
  CHECK(text.find("| a\\|b \\*c\\* \\<img src=x\\> \\[d\\](e) \\`f\\`\\\\x0A\\# g |") !=
        std::string::npos);
}

}  // namespace
}  // namespace wattweek::report
