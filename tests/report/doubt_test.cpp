#include <doctest/doctest.h>

#include "fixture.hpp"
#include "sections.hpp"

namespace wattweek::report {
namespace {

decide::Spread spread(double low, double high) {
  return {(low + high) / 2, (high - low) / 4, low, (low + high) / 2, high};
}

/// Two candidates over five years, of which one is the best in nine draws of ten.
decide::Assessment with_doubt() {
  decide::Assessment all = with_horizon();
  decide::Uncertainty doubt;
  doubt.draws = 1000;
  doubt.seed = 7;
  doubt.ranges = 3;
  doubt.candidates = {
      {spread(950, 1050), spread(290, 310), spread(1300, 1500), 0.1, spread(1300, 1500).sd},
      {spread(98, 102), spread(27, 33), spread(400, 440), 0.9, spread(400, 440).sd}};
  doubt.best_two = {1, 0};
  doubt.drivers = {{"rack.toml:watts.idle", 0.71}, {"study.toml:candidate.palm.purchase", 0.29}};
  doubt.explained = 0.99;
  all.uncertainty = doubt;
  return all;
}

std::string said(const decide::Assessment& all) {
  const model::Study made = study();
  const Shown s = shown(made, all);
  return lay_out_text({"", {doubt(s)}}, {});
}

TEST_CASE("doubt: results stand with their ranges, and what to settle first is named") {
  CHECK(said(with_doubt()) == R"(How sure
3 figures of the files are ranges. In 1000 draws of all of them (seed 7) these
were the results, with the central one first and 95 of 100 within the brackets:

                                                                    costs
                        kWh        a year EUR      5-year cost EUR  least
rack     1000 (950 to 1050)  300 (290 to 310)  1400 (1300 to 1500)   10 %
palm  100.0 (98.0 to 102.0)     30 (27 to 33)     420 (400 to 440)   90 %

- Settle rack.toml:watts.idle first: it holds 71 % of the doubt between
  Palm-size box and Rack server. Then study.toml:candidate.palm.purchase (29 %).
)");
}

TEST_CASE("doubt: what no range touches stands without brackets") {
  decide::Assessment all = with_doubt();
  all.uncertainty->candidates[0].cost = {300, 0, 300, 300, 300};
  const std::string text = said(all);
  CHECK(text.find(" 300.00 ") != std::string::npos);
  CHECK(text.find("300.00 (") == std::string::npos);
}

TEST_CASE("doubt: shares that leave much unexplained are not left without a word") {
  decide::Assessment all = with_doubt();
  all.uncertainty->explained = 0.8;
  CHECK(said(all).find(
            "Each range by itself explains 80 % of that doubt; the rest is interplay and") !=
        std::string::npos);
}

TEST_CASE("doubt: where straight lines mislead the draws are said to be right") {
  decide::Assessment all = with_doubt();
  all.uncertainty->candidates[0].first_order_sd = 100;
  const std::string text = said(all);
  CHECK(text.find("Rack server: straight lines would make the standard deviation") !=
        std::string::npos);
  CHECK(text.find("100.00 EUR") != std::string::npos);
  CHECK(text.find("Palm-size box: straight lines") == std::string::npos);
}

TEST_CASE("doubt: a chance that is not quite none or all is not rounded to it") {
  decide::Assessment all = with_doubt();
  all.uncertainty->candidates[0].cheapest = 0.0004;
  all.uncertainty->candidates[1].cheapest = 0.9996;
  const std::string text = said(all);
  CHECK(text.find("below 1 %") != std::string::npos);
  CHECK(text.find("above 99 %") != std::string::npos);
}

TEST_CASE("doubt: without a time over which they compete, none is called the best") {
  decide::Assessment all = assessment();
  all.uncertainty = with_doubt().uncertainty;
  all.uncertainty->best_two.reset();
  for (auto& candidate : all.uncertainty->candidates) {
    candidate.cheapest.reset();
    candidate.present_cost.reset();
    candidate.first_order_sd = candidate.cost.sd;
  }
  const std::string text = said(all);
  CHECK(text.find("costs least") == std::string::npos);
  CHECK(text.find("Settle") == std::string::npos);
  CHECK(text.find("300 (290 to 310)") != std::string::npos);
}

}  // namespace
}  // namespace wattweek::report
