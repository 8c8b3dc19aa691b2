#include <doctest/doctest.h>

#include "fixture.hpp"

namespace wattweek::report {
namespace {

TEST_CASE("markdown: tables, sentences and notes") {
  decide::Assessment all = with_horizon();
  all.notes = {note("skipped", "palm", "it does not offer films")};
  CHECK(markdown(study(), all, Scope::compare) == R"(## Hall cupboard

2027-01-01 to 2027-12-31, 365 days, 8760 hours, Europe/Dublin

Electricity contract: Day and night, in EUR

| | kWh | mean W | cost EUR | purchase EUR | 5-year cost\* EUR |
| :-- | --: | --: | --: | --: | --: |
| Rack server (baseline) | 1000.0 | 114.2 | 300.00 | 0.00 | 1400.00 |
| Palm-size box | 100.0 | 11.4 | 30.00 | 300.00 | 420.00 |

\* Purchase, electricity and later costs less resale, each at its present value.

### Rack server \[rack\]

| | kWh | cost EUR | use |
| :-- | --: | --: | :-- |
| base: off, asleep, idle | 800.0 | 270.00 | |
| Film streaming | 200.0 | 30.00 | 760 stream-hours |
| together | 1000.0 | 300.00 | |

Device-hours: 8000 idle, 760 active. Highest draw 60.0 W. Price bands: night 500.0 kWh for 75.00 EUR, day 500.0 kWh for 225.00 EUR.

### Palm-size box \[palm\]

| | kWh | cost EUR | use |
| :-- | --: | --: | :-- |
| base: off, asleep, idle | 80.0 | 27.00 | |
| Film streaming | 20.0 | 3.00 | 760 stream-hours |
| together | 100.0 | 30.00 | |

Device-hours: 8000 idle, 760 active. Highest draw 60.0 W. Price bands: night 50.0 kWh for 7.50 EUR, day 50.0 kWh for 22.50 EUR.

### Compared with Rack server

- Palm-size box uses 900.0 kWh less a year and costs 270.00 EUR less a year to run. It costs 300.00 EUR more to buy. The extra purchase is earned back in 1.1 years; with discounting, price rises and later costs in 1.2 years. Over 5 years, all at present value, it costs 420.00 EUR against 1400.00 EUR: 980.00 EUR less. The two are equal where every price per kWh is 0.222 times today's.

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
  const std::string text = markdown(named, assessment(), Scope::estimate);
  CHECK(text.find("| a\\|b \\*c\\* \\<img src=x\\> \\[d\\](e) \\`f\\`\\\\x0A\\# g |") !=
        std::string::npos);
}

}  // namespace
}  // namespace wattweek::report
