// Crossings of whole studies, put back into them.

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

#include "doubt.hpp"
#include "edited_study.hpp"

using namespace wattweek;
using namespace wattweek::decide;
using namespace wattweek::tests;

TEST_CASE("a crossing put back into the study makes the two equal") {
  struct Swept {
    const char* factor;
    double low, high;
    std::string (*edit)(double);
  };
  const std::vector<Swept> all = {
      {"price", 0, 6, [](double f) { return price(f); }},
      {"use", 0, 4, [](double f) { return with_household(use(f, kEditedStudy), 1); }},
      {"use.films", 0, 3, [](double f) { return with_household(films(f, kEditedStudy), 1); }},
      {"purchase", 0, 3, [](double f) { return purchase(f, f, f); }},
      {"purchase.palm", 0, 2, [](double f) { return purchase(1, f, 1); }},
      {"household", 0, 6, [](double f) { return with_household(kEditedStudy, f); }},
      {"idle.rack", 0, 4,
       [](double f) { return with_household(idle_of_rack(f, kEditedStudy), 1); }},
      {"idle.palm", 0, 6,
       [](double f) { return with_household(idle_of_palm(f, kEditedStudy), 1); }}};
  const read::StudyInput input = read_study(kEditedStudy);
  std::size_t found = 0;
  for (const Swept& swept : all) {
    CAPTURE(swept.factor);
    WhatIf what_if(input.study, input.zone,
                   {sweep(input.study, swept.factor, swept.low, swept.high, 11)}, 1);
    REQUIRE(what_if.prepare().empty());
    const auto got = what_if.crossings();
    REQUIRE(std::holds_alternative<std::vector<Crossing>>(got));
    const auto& crossings = std::get<std::vector<Crossing>>(got);
    found += crossings.size();
    CHECK(std::is_sorted(crossings.begin(), crossings.end(),
                         [](const Crossing& a, const Crossing& b) { return a.at < b.at; }));
    for (const Crossing& crossing : crossings) {
      const auto put_back = totals_of(reckon(swept.edit(crossing.at)).result);
      CHECK(crossing.first < crossing.second);
      CHECK(close(put_back[crossing.first].present_cost, put_back[crossing.second].present_cost));
    }
    // Between the ends the order of two changes as often as they cross.
    const Grid grid(what_if);
    for (std::size_t a = 0; a < 3; ++a) {
      for (std::size_t b = a + 1; b < 3; ++b) {
        const auto sign = [&](std::size_t row) {
          const std::vector<Totals> totals = grid.row(row);
          return totals[a].present_cost < totals[b].present_cost;
        };
        const auto times =
            std::count_if(crossings.begin(), crossings.end(), [a, b](const Crossing& crossing) {
              return crossing.first == a && crossing.second == b;
            });
        CHECK((times % 2 == 1) == (sign(0) != sign(grid.rows - 1)));
      }
    }
  }
  CHECK(found >= 8);
}

TEST_CASE("where prices cross is the break-even of the comparison") {
  // Without a minimum there is one, and it is everybody's.
  for (const std::string& text : {kEditedStudy, without_line(kEditedStudy, "minimum_per_month")}) {
    const Reckoned all = reckon(text);
    WhatIf what_if(all.study, all.zone, {sweep(all.study, "price", 0, 12, 11)}, 1);
    REQUIRE(what_if.prepare().empty());
    const auto crossings = std::get<std::vector<Crossing>>(what_if.crossings());
    int compared = 0;
    for (const ComparisonRow& row : all.result.rows) {
      std::vector<double> at;
      for (const Crossing& crossing : crossings) {
        if (crossing.first == 0 && crossing.second == row.candidate) at.push_back(crossing.at);
      }
      if (at.size() != 1) continue;
      ++compared;
      REQUIRE(row.break_even_price_factor);
      CHECK(std::fabs(at[0] - *row.break_even_price_factor) < 1e-9);
    }
    CHECK(compared == 2);
  }
}

TEST_CASE("below the minimum bill candidates of one price cost the same, and cross where it ends") {
  // January: 744 h. 10 W are 7.44 kWh, 40 W are 29.76; the standing charge of 5 and the minimum of
  // 20 leave 15 for energy: the second passes it from a factor of 15 / 29.76 on.
  const read::StudyInput input = read_study(R"(
time_zone = "Etc/UTC"
start = 2027-01-01
months = 1
[tariff]
currency = "EUR"
standing_per_month = 5
minimum_per_month = 20
band = [ { name = "all", price = 1 } ]
[[candidate]]
id = "palm"
[[candidate.device]]
watts = { idle = 10 }
[[candidate]]
id = "rack"
[[candidate.device]]
watts = { idle = 40 }
)");
  WhatIf from_0(input.study, input.zone, {sweep(input.study, "price", 0, 2, 11)}, 1);
  REQUIRE(from_0.prepare().empty());
  const auto crossings = std::get<std::vector<Crossing>>(from_0.crossings());
  REQUIRE(crossings.size() == 1);
  CHECK(crossings[0].at == 0);  // An interval of equality, at its lower end.
  WhatIf above(input.study, input.zone, {sweep(input.study, "price", 15 / 29.76 + 1e-6, 2, 11)}, 1);
  REQUIRE(above.prepare().empty());
  CHECK(std::get<std::vector<Crossing>>(above.crossings()).empty());
}
