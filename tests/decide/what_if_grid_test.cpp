// Grids: their order, their ends, and that neither size nor threads show in the rows.

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

#include "doubt.hpp"
#include "edited_study.hpp"

using namespace wattweek;
using namespace wattweek::decide;
using namespace wattweek::tests;

TEST_CASE("several factors at once make a full grid, the first varying slowest") {
  const read::StudyInput input = read_study(kEditedStudy);
  WhatIf what_if(
      input.study, input.zone,
      {sweep(input.study, "use", 0.5, 1.5, 3), sweep(input.study, "price", 0.4, 2, 3),
       sweep(input.study, "household", 0, 2, 2), sweep(input.study, "purchase.tower", 0.5, 1, 2),
       sweep(input.study, "idle.palm", 0.5, 3, 2)},
      2);
  const Grid grid(what_if);
  REQUIRE(grid.rows == 72);
  for (std::size_t r = 0; r < grid.rows; ++r) {
    const std::vector<double> at = values_in_row(what_if.sweeps(), r);
    CHECK(at == std::vector<double>{0.5 + 0.5 * static_cast<double>(r / 24),
                                    what_if.sweeps()[1].at(r / 8 % 3), r / 4 % 2 == 0 ? 0.0 : 2.0,
                                    r / 2 % 2 == 0 ? 0.5 : 1.0, r % 2 == 0 ? 0.5 : 3.0});
    if (r % 5 != 0) continue;  // Some of them, in every combination of factors.
    CAPTURE(r);
    const std::string text = with_household(
        idle_of_palm(at[4], purchase(1, 1, at[3], price(at[1], use(at[0], kEditedStudy)))), at[2]);
    CHECK(difference(grid.row(r), totals_of(reckon(text).result)) == "");
  }
}

TEST_CASE("points count both ends, exactly") {
  for (const auto& [low, high, points] : {std::tuple{0.1, 0.7, std::size_t{7}},
                                          {1.0 / 3, 10.0 / 3, std::size_t{11}},
                                          {0.0, 1e-3, std::size_t{1000}},
                                          {0.3, 0.9, std::size_t{2}}}) {
    const Sweep sweep{{Factor::Kind::price, 0}, low, high, points};
    CHECK(sweep.at(0) == low);
    CHECK(sweep.at(points - 1) == high);
    for (std::size_t i = 1; i < points; ++i) {
      CHECK(sweep.at(i) > sweep.at(i - 1));
      CHECK(sweep.at(i) - sweep.at(i - 1) ==
            doctest::Approx((high - low) / static_cast<double>(points - 1)).epsilon(1e-9));
    }
  }
}

TEST_CASE("a grid too large to be kept gives the rows of one that is kept") {
  // Under a minimum 79 figures for each of the 201 x 201 combinations and three candidates are more
  // than 2^22, and those of 11 x 11 are few.
  const read::StudyInput input = read_study(kEditedStudy);
  const auto sweeps = [&input](std::size_t points) {
    return std::vector<Sweep>{sweep(input.study, "use", 0.5, 1.5, points),
                              sweep(input.study, "household", 0, 2, points),
                              sweep(input.study, "price", 0.5, 2, 2)};
  };
  WhatIf small(input.study, input.zone, sweeps(11), 1);
  const Grid kept(small);
  WhatIf large(input.study, input.zone, sweeps(201), 2);
  bool has_reckoned_ahead = false;
  REQUIRE(large.prepare([&](const std::string&, double) { has_reckoned_ahead = true; }).empty());
  CHECK(!has_reckoned_ahead);
  for (const std::size_t i : {0U, 3U, 10U}) {
    for (const std::size_t j : {0U, 6U, 10U}) {
      Rows rows;
      REQUIRE(large.reckon((i * 201 + j) * 40 + 1, 1, rows).empty());
      CHECK(values_in_row(large.sweeps(), (i * 201 + j) * 40)[0] ==
            doctest::Approx(0.5 + 0.1 * static_cast<double>(i)));
      CHECK(difference(rows.totals, kept.row((i * 11 + j) * 2 + 1)) == "");
      CHECK(rows.best[0] == kept.all.best[(i * 11 + j) * 2 + 1]);
    }
  }
}

TEST_CASE("rows are the same bytes with one, two and seven threads, wherever they begin") {
  const read::StudyInput input = read_study(kEditedStudy);
  for (const std::size_t points : {40U, 401U}) {  // Kept, and not.
    std::vector<std::vector<double>> all;
    for (const unsigned threads : {1U, 2U, 7U}) {
      WhatIf what_if(
          input.study, input.zone,
          {sweep(input.study, "household", 0, 2, points), sweep(input.study, "use", 0, 2, points),
           sweep(input.study, "price", 0, 2, 2)},
          threads);
      REQUIRE(what_if.prepare().empty());
      std::vector<double> figures;
      const std::size_t first = 137;
      const std::size_t count = points == 40 ? 2500 : 1100;
      for (const std::size_t begin : {first, first + count / 2}) {
        Rows rows;
        REQUIRE(what_if.reckon(begin, count / 2, rows).empty());
        CHECK(rows.first == begin);
        CHECK(rows.best.size() == count / 2);
        for (const Totals& totals : rows.totals) {
          figures.insert(figures.end(), {totals.energy_kwh, totals.cost, totals.present_cost});
        }
      }
      all.push_back(figures);
    }
    CHECK(all[0] == all[1]);
    CHECK(all[0] == all[2]);
  }
}

TEST_CASE("the best of a row is the lowest present cost, the first where equal") {
  const read::StudyInput input = read_study(kEditedStudy);
  WhatIf what_if(input.study, input.zone, {sweep(input.study, "price", 0, 3, 31)}, 1);
  const Grid grid(what_if);
  std::vector<std::size_t> seen;
  for (std::size_t r = 0; r < grid.rows; ++r) {
    const std::vector<Totals> row = grid.row(r);
    const auto best = std::min_element(
        row.begin(), row.end(),
        [](const Totals& a, const Totals& b) { return a.present_cost < b.present_cost; });
    CHECK(grid.all.best[r] == static_cast<std::size_t>(best - row.begin()));
    if (seen.empty() || seen.back() != grid.all.best[r]) seen.push_back(grid.all.best[r]);
  }
  CHECK(seen.size() > 1);
  // Twins: whatever the price, and where everything costs nothing.
  const read::StudyInput twins = read_study(kYear2027 + kFlatTariff + R"(
[[candidate]]
id = "one"
[[candidate.device]]
watts = { idle = 10 }
[[candidate]]
id = "two"
[[candidate.device]]
watts = { idle = 10 }
)");
  WhatIf of_twins(twins.study, twins.zone, {sweep(twins.study, "price", 0, 2, 5)}, 1);
  CHECK(Grid(of_twins).all.best == std::vector<std::uint32_t>(5, 0));
}

TEST_CASE("factors are known by their names, and no others are") {
  const model::Study study = read_study(kEditedStudy).study;
  CHECK(factor_names(study) ==
        std::vector<std::string>{"price", "use", "purchase", "household", "use.films", "use.photos",
                                 "use.cameras", "idle.rack", "idle.palm", "idle.tower",
                                 "purchase.rack", "purchase.palm", "purchase.tower"});
  for (const std::string& name : factor_names(study))
    CHECK(name_of(study, *factor_named(study, name)) == name);
  for (const char* name :
       {"", "Price", "use.", "use.rack", "idle", "idle.films", "price.day", "purchase.0"}) {
    CHECK_FALSE(factor_named(study, name));
  }
}

TEST_CASE("a factor that makes more outcomes than can be merged is told") {
  // At half the share 121^3 sums; with nobody using it, one.
  const read::StudyInput input = read_study(kYear2027 + kFlatTariff + R"(
[[workload]]
id = "films"
use = [ { units = 120, share = 0, pattern = "independent" }, { months = "feb", units = 120, share = 1, pattern = "independent" } ]
[[workload]]
id = "music"
use = [ { units = 120, share = 1, pattern = "independent" } ]
[[workload]]
id = "mail"
use = [ { units = 120, share = 1, pattern = "independent" } ]
[[candidate]]
id = "box"
[[candidate.device]]
name = "box"
watts = { idle = 10, max = 100 }
increments = { films = 1, music = 1.4142135, mail = 1.7320508 }
)");
  REQUIRE(std::holds_alternative<Assessment>(assess(input.study, input.zone)));
  WhatIf what_if(input.study, input.zone, {sweep(input.study, "use", 0.5, 1, 2)}, 2);
  const auto problems = what_if.prepare();
  REQUIRE(problems.size() == 1);
  CHECK(
      diag::to_text(problems[0]) ==
      "study.toml:22:1: error: device 'box' of candidate 'box': on 2027-02-01 00:00 the units in "
      "use of 'films', 'music', 'mail' have more than 1048576 joint outcomes with different sums; "
      "expected fewer units or workloads at once, or no cap and curve on them");
  CHECK(std::holds_alternative<std::vector<diag::Diagnostic>>(what_if.crossings()));
}
