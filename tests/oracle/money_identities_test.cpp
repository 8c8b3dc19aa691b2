// Money: what must be so in every study, whatever its figures.

#include <doctest/doctest.h>

#include "differences.hpp"
#include "every_study.hpp"

using namespace wattweek;
using namespace wattweek::oracle;

namespace {

void multiply_prices(model::Tariff& tariff, double factor) {
  const auto multiply = [factor](model::PriceRange& price) {
    price = {price.low * factor, price.high * factor};
  };
  for (model::Band& band : tariff.bands) multiply(band.price);
  for (model::Block& block : tariff.blocks) multiply(block.price);
}

}  // namespace

TEST_CASE("a candidate against itself saves nothing") {
  for_random_studies(6001, 120, true, [](const read::StudyInput& input, const auto&) {
    model::Study study = input.study;
    study.candidates = {study.candidates[0], study.candidates[0]};
    study.candidates[1].id = "twin";
    study.baseline = 0;
    if (study.household.includes) study.household.includes = std::nullopt;
    const decide::ComparisonRow row = assess(study, input.zone).rows.at(0);
    CHECK(row.saves_kwh == 0);
    CHECK(row.saves_cost == 0);
    CHECK(row.extra_purchase == 0);
    CHECK(row.payback_years == 0.0);
    CHECK(row.overtaken_years == std::nullopt);
    const bool has_horizon = study.finance.has_value();
    CHECK(row.discounted_payback_years.value_or(-1) == (has_horizon ? 0 : -1));
    CHECK(row.saves_present_cost.value_or(-1) == (has_horizon ? 0 : -1));
    CHECK(row.break_even_price_factor.value_or(-1) == (has_horizon ? 1 : -1));
  });
}

TEST_CASE("prices three times as high make energy three times as dear") {
  for_random_studies(7001, 120, false, [](const read::StudyInput& input, const auto&) {
    model::Study study = input.study;
    study.tariff.minimum_per_month = std::nullopt;
    const decide::Assessment before = assess(study, input.zone);
    multiply_prices(study.tariff, 3);
    const decide::Assessment after = assess(study, input.zone);
    for (std::size_t c = 0; c < study.candidates.size(); ++c) {
      const billing::CandidateCost& cheap = before.candidates[c].cost;
      const billing::CandidateCost& dear = after.candidates[c].cost;
      CHECK(agree(units::in_currency(dear.cost), 3 * units::in_currency(cheap.cost)));
      CHECK(agree(sum_of(dear.by_band), 3 * sum_of(cheap.by_band)));
      CHECK(agree(units::in_currency(dear.by_cause[0]), 3 * units::in_currency(cheap.by_cause[0])));
    }
  });
}

// Both bills are the minimum's, so that both candidates cost exactly nothing, whatever rounding
// would make of the lines of a bill.
TEST_CASE("between two candidates that a minimum bill swallows nothing is saved") {
  const StudyText text{R"(
time_zone = "Etc/UTC"
start = 2027-01-01
months = 1
[tariff]
currency = "EUR"
tax = 0.19
standing_per_day = 0.37
minimum_per_month = 90
[[tariff.band]]
name = "all"
price = 0.1
[[candidate]]
id = "dear"
purchase = 100
[[candidate.device]]
watts = { idle = 11.3 }
[[candidate]]
id = "cheap"
[[candidate.device]]
watts = { idle = 7.7 }
)",
                       {}};
  const decide::Assessment assessment = assess_valid(text);
  CHECK(units::in_currency(assessment.candidates[0].cost.cost) == 0);
  CHECK(units::in_currency(assessment.candidates[1].cost.cost) == 0);
  CHECK(assessment.rows.at(0).payback_years == 0.0);
  CHECK(assessment.rows.at(0).overtaken_years == std::nullopt);
}

TEST_CASE("at the break-even price both cost the same over the horizon") {
  int found = 0;
  for_random_studies(9001, 160, true,
                     [&found](const read::StudyInput& input, const decide::Assessment& assessment) {
                       for (const decide::ComparisonRow& row : assessment.rows) {
                         if (!row.break_even_price_factor) continue;
                         ++found;
                         model::Study study = input.study;
                         multiply_prices(study.tariff, *row.break_even_price_factor);
                         const decide::Assessment there = assess(study, input.zone);
                         const double own = there.candidates[row.candidate].lifetime->present_cost;
                         const double baseline =
                             there.candidates[there.baseline].lifetime->present_cost;
                         CHECK(agree(own, baseline));
                       }
                     });
  CHECK(found > 40 / kLotDivisor);
}
