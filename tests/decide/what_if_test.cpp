// Rows of a sweep, held against whole assessments of studies that were edited by hand.

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

#include "../support/week_text.hpp"
#include "doubt.hpp"
#include "edited_study.hpp"
#include "linked_text.hpp"
#include "wattweek/decide/ranking.hpp"

using namespace wattweek;
using namespace wattweek::decide;
using namespace wattweek::tests;

namespace {

/// Rows of one sweep of `kEditedStudy` against the study edited for each of its values.
template <class Edit>
void hold_rows_against_edits(const std::string& factor, double low, double high, Edit edit) {
  CAPTURE(factor);
  const read::StudyInput input = read_study(kEditedStudy);
  WhatIf what_if(input.study, input.zone, {sweep(input.study, factor, low, high, 9)}, 1);
  const Grid grid(what_if);
  REQUIRE(grid.rows == 9);
  for (std::size_t r = 0; r < grid.rows; ++r) {
    const double value = values_in_row(what_if.sweeps(), r)[0];
    CAPTURE(value);
    const Reckoned edited = reckon(edit(value));
    CHECK(difference(grid.row(r), totals_of(edited.result)) == "");
    CHECK(grid.all.best[r] == ranking(edited.study, edited.result)->front().candidate);
  }
}
}  // namespace

TEST_CASE("rows of a sweep of prices are studies with other prices") {
  // At low prices all bills lie below the minimum, at high ones none.
  hold_rows_against_edits("price", 0, 3, [](double f) { return price(f); });
}

TEST_CASE("rows of a sweep of use are studies with other shares, at most 1 at each end") {
  hold_rows_against_edits("use", 0, 4,
                          [](double f) { return with_household(use(f, kEditedStudy), 1); });
}

TEST_CASE("rows of a sweep of one workload's use leave the others as they are") {
  hold_rows_against_edits("use.films", 0, 4,
                          [](double f) { return with_household(films(f, kEditedStudy), 1); });
}

TEST_CASE("rows of a sweep of purchases are studies with other purchases") {
  hold_rows_against_edits("purchase", 0, 2, [](double f) { return purchase(f, f, f); });
  hold_rows_against_edits("purchase.palm", 0, 2, [](double f) { return purchase(1, f, 1); });
}

TEST_CASE("rows of a sweep of the household multiply what is left after the metered machine") {
  hold_rows_against_edits("household", 0, 3,
                          [](double f) { return with_household(kEditedStudy, f); });
}

TEST_CASE("rows of a sweep of idle watts raise busy and max where they must") {
  hold_rows_against_edits(
      "idle.rack", 0, 4, [](double f) { return with_household(idle_of_rack(f, kEditedStudy), 1); });
  hold_rows_against_edits(
      "idle.palm", 0, 4, [](double f) { return with_household(idle_of_palm(f, kEditedStudy), 1); });
  hold_rows_against_edits("idle.tower", 0, 4,
                          [](double) { return kEditedStudy; });  // at_load alone.
}

TEST_CASE("use as a whole and of one workload multiply each other") {
  const read::StudyInput input = read_study(kEditedStudy);
  WhatIf what_if(input.study, input.zone,
                 {sweep(input.study, "use.films", 0.5, 2, 2), sweep(input.study, "use", 0.5, 2, 2)},
                 1);
  const Grid grid(what_if);
  for (std::size_t r = 0; r < 4; ++r) {
    const std::vector<double> at = values_in_row(what_if.sweeps(), r);
    // Films by both, the rest by one: `use` first, then what films still lack.
    std::string text = use(at[1], kEditedStudy);
    const auto share = [&at](double as_written, double factor) {
      return digits(std::min(1.0, as_written * at[1] * factor));
    };
    text = replaced(text, "share = " + share(0.4, 1), "share = " + share(0.4, at[0]));
    text = replaced(text, "share = " + share(0.375, 1), "share = " + share(0.375, at[0]));
    CHECK(difference(grid.row(r), totals_of(reckon(with_household(text, 1)).result)) == "");
  }
}

TEST_CASE("a factor of 1 on everything is the study as it is written") {
  const read::StudyInput input = read_study(kEditedStudy);
  const std::vector<Totals> as_written = totals_of(assessed(input));
  for (const std::string& name : factor_names(input.study)) {
    CAPTURE(name);
    WhatIf what_if(input.study, input.zone, {sweep(input.study, name, 0.5, 1.5, 3)}, 1);
    CHECK(difference(Grid(what_if).row(1), as_written) == "");
  }
}

TEST_CASE("a study of ten years is reckoned row by row as well") {
  const std::string text =
      replaced(replaced(kYear2027, "start = 2027-01-01", "start = 2027-01-01\nmonths = 120"),
               "time_zone", "time_zone") +
      R"(
[tariff]
currency = "EUR"
minimum_per_month = 6
band = [ { name = "all", price = 0.5 } ]
[household]
kwh_per_year = 100
[[workload]]
id = "films"
use = [ { share = 0.5 } ]
[[candidate]]
id = "box"
[[candidate.device]]
watts = { idle = 4 }
increments = { films = 2 }
)";
  const read::StudyInput input = read_study(text);
  // 122 figures for 200 x 200 combinations are more than 2^22.
  WhatIf what_if(
      input.study, input.zone,
      {sweep(input.study, "household", 0, 1.99, 200), sweep(input.study, "use", 0, 1.99, 200)}, 2);
  REQUIRE(what_if.prepare().empty());
  Rows rows;
  REQUIRE(what_if.reckon(150 * 200 + 60, 1, rows).empty());
  const std::string edited = replaced(replaced(text, "kwh_per_year = 100", "kwh_per_year = 150"),
                                      "share = 0.5", "share = 0.3");
  CHECK(difference(rows.totals, totals_of(reckon(edited).result)) == "");
}

TEST_CASE("a sweep of idle watts leaves a week as it was measured") {
  const auto text = [](double idle_w) {
    return kYear2027 + kFlatTariff +
           "[[candidate]]\nid = \"pair\"\n[[candidate.device]]\nwatts = { " + rising_week() +
           " }\n[[candidate.device]]\nwatts.idle = " + std::to_string(idle_w) + "\n";
  };
  const read::StudyInput input = read_study(text(10));
  WhatIf what_if(input.study, input.zone, {sweep(input.study, "idle.pair", 0, 2, 3)}, 1);
  const Grid grid(what_if);
  for (std::size_t r = 0; r < grid.rows; ++r) {
    const double factor = values_in_row(what_if.sweeps(), r)[0];
    CHECK(difference(grid.row(r), totals_of(reckon(text(10 * factor)).result)) == "");
  }
}
