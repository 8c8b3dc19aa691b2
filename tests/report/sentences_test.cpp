#include "sentences.hpp"

#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>

#include "fixture.hpp"

namespace wattweek::report {
namespace {

std::string sentence(const decide::Assessment& all) {
  const auto all_of_them = comparison_sentences(study(), all, all.rows.front());
  return fmt::format("{}", fmt::join(all_of_them, " "));
}

TEST_CASE("sentences: without a horizon no payback is named") {
  CHECK(sentence(assessment()) ==
        "Palm-size box uses 900.0 kWh less a year and costs 270.00 EUR less a year to run."
        " It costs 300.00 EUR more to buy. Whether that pays depends on the years it is kept:"
        " give finance.years in the study or --years N.");
}

TEST_CASE("sentences: amounts as people say them, and no word of options for who only reads") {
  const auto said =
      comparison_sentences(study(), assessment(), assessment().rows.front(), Amounts::spoken);
  CHECK(fmt::format("{}", fmt::join(said, " ")) ==
        "Palm-size box uses 900 kWh less a year and costs 270 EUR less a year to run."
        " It costs 300 EUR more to buy. Whether that pays depends on the years it is kept, and"
        " these are not given.");
}

TEST_CASE("sentences: a payback stands beside the verdict of the present costs and the horizon") {
  CHECK(sentence(with_horizon()) ==
        "Palm-size box uses 900.0 kWh less a year and costs 270.00 EUR less a year to run."
        " It costs 300.00 EUR more to buy. The extra purchase is earned back in 13 months; with"
        " discounting, price rises and later costs in 15 months. Over 5 years, all at present"
        " value, it costs 420.00 EUR against 1400.00 EUR: 980.00 EUR less. It stays ahead until"
        " every price per kWh has fallen to 0.222 times today's: 0.04 EUR (night), 0.0799 EUR"
        " (day), tax included.");
}

TEST_CASE("sentences: a payback that looks good is contradicted by a worse present cost") {
  decide::Assessment all = with_horizon();
  all.candidates[1].lifetime->present_cost = 1450;
  all.rows[0].saves_present_cost = -50;
  all.rows[0].discounted_payback_years.reset();
  all.rows[0].break_even_price_factor = 1.04;
  CHECK(sentence(all) ==
        "Palm-size box uses 900.0 kWh less a year and costs 270.00 EUR less a year to run."
        " It costs 300.00 EUR more to buy. The extra purchase is earned back in 13 months; with"
        " discounting, price rises and later costs not within 5 years. Over 5 years, all"
        " at present value, it costs 1450.00 EUR against 1400.00 EUR: 50.00 EUR more. It would draw"
        " level if every price per kWh rose to 1.04 times today's: 0.1872 EUR (night), 0.3744 EUR"
        " (day), tax included.");
}

TEST_CASE("sentences: cheaper to buy and dearer to run stays ahead for a while") {
  decide::Assessment all = with_horizon();
  decide::ComparisonRow& row = all.rows[0];
  row.saves_kwh = -10;
  row.saves_cost = -20;
  row.extra_purchase = -20;
  row.payback_years.reset();
  row.overtaken_years = 1;
  row.saves_present_cost = -75;
  row.break_even_price_factor.reset();
  CHECK(sentence(all) ==
        "Palm-size box uses 10.0 kWh more a year and costs 20.00 EUR more a year to run."
        " It costs 20.00 EUR less to buy. It stays ahead for 12 months, then its running cost has"
        " eaten up what it saved. Over 5 years, all at present value, it costs 420.00 EUR against"
        " 1400.00 EUR: 75.00 EUR more. No level of electricity prices changes that.");
}

TEST_CASE("sentences: the verdict turns at dearer or at cheaper electricity") {
  decide::Assessment all = with_horizon();
  all.rows[0].break_even_price_factor = 2.5;
  CHECK(sentence(all).find("It stays ahead until every price per kWh has risen to 2.5 times") !=
        std::string::npos);
  all.rows[0].saves_present_cost = -50;
  all.rows[0].break_even_price_factor = 0.4;
  CHECK(sentence(all).find("It would draw level if every price per kWh fell to 0.4 times") !=
        std::string::npos);
}

TEST_CASE("sentences: where blocks or many bands decide, the turning point names no prices") {
  model::Study many = study();
  many.tariff.bands.resize(4, many.tariff.bands[0]);
  const decide::Assessment all = with_horizon();
  CHECK(comparison_sentences(many, all, all.rows[0]).back() ==
        "It stays ahead until every price per kWh has fallen to 0.222 times today's.");
  model::Study ladder = study();
  ladder.tariff.blocks.resize(1);
  CHECK(comparison_sentences(ladder, all, all.rows[0]).back() ==
        "It stays ahead until every price per kWh has fallen to 0.222 times today's.");
}

TEST_CASE("sentences: below two years a payback is said in months, below half a month as such") {
  decide::Assessment all = with_horizon();
  all.rows[0].payback_years = 0.03;
  all.rows[0].discounted_payback_years = 2.34;
  CHECK(sentence(all).find("is earned back in less than a month; with discounting, price rises and"
                           " later costs in 2.3 years.") != std::string::npos);
}

TEST_CASE("sentences: dearer to buy and to run is never earned back") {
  decide::Assessment all = with_horizon();
  decide::ComparisonRow& row = all.rows[0];
  row.saves_cost = -20;
  row.payback_years.reset();
  row.saves_present_cost = -400;
  CHECK(sentence(all).find("What it costs more to buy is never earned back. Over 5 years,") !=
        std::string::npos);
}

TEST_CASE("sentences: a set-up like the baseline is the same in every respect") {
  decide::Assessment all = with_horizon();
  decide::ComparisonRow& row = all.rows[0];
  row = {};
  row.candidate = 1;
  row.payback_years = 0;
  row.discounted_payback_years = 0;
  row.saves_present_cost = 0;
  row.break_even_price_factor = 1;
  all.candidates[1].lifetime = all.candidates[0].lifetime;
  CHECK(sentence(all) ==
        "Palm-size box uses as much energy and costs the same to run. Both cost the same to buy."
        " Over 5 years, all at present value, it costs 1400.00 EUR against 1400.00 EUR: the same.");
}

TEST_CASE("sentences: a note names its place or candidate and its code") {
  CHECK(note_sentence(note("skipped", "palm", "it does not offer films")) ==
        "palm: it does not offer films (skipped).");
  CHECK(note_sentence(placed_note("never-holds", "this window never holds")) ==
        "study.toml:7:3: this window never holds (never-holds).");
}

TEST_CASE("sentences: where a machine rests, what rests with it is said") {
  model::Study resting = study();
  const auto says = [&resting](std::string_view what) {
    const std::vector<std::string> all = limits(resting);
    return std::any_of(all.begin(), all.end(), [what](const std::string& each) {
      return each.find(what) != std::string::npos;
    });
  };
  CHECK_FALSE(says("Before power is cut, shut down."));
  resting.candidates[1].devices[0].rests.resize(1);
  CHECK(
      says("Before power is cut, shut down. A gateway, router or camera host at rest takes "
           "telephone and emergency calls, alarms and remote monitoring with it"));
}

TEST_CASE("sentences: the grid's average is named where CO2 is reckoned") {
  model::Study with_carbon = study();
  CHECK(limits(with_carbon)[0].find("CO2") == std::string::npos);
  with_carbon.carbon_kg_per_kwh = 0.3;
  CHECK(limits(with_carbon)[0].find("CO2 is reckoned with the grid's average.") !=
        std::string::npos);
}

TEST_CASE("sentences: the ranking says over which time, and how much more each other one costs") {
  CHECK(ranking_sentence(study(), assessment()).empty());  // Purchases differ, no horizon.
  CHECK(ranking_sentence(study(), with_horizon()) ==
        "Lowest cost over 5 years, all at present value: Palm-size box (420.00 EUR). Then"
        " Rack server (980.00 EUR more).");
}

TEST_CASE("sentences: a ranking of what does not serve the same says so") {
  model::Study equal = study();
  for (model::Candidate& candidate : equal.candidates) candidate.purchase = {};
  decide::Assessment all = assessment();
  all.candidates[1].cost.cost = all.candidates[0].cost.cost;
  const std::string same = ranking_sentence(equal, all);
  CHECK(same.find("Lowest cost over 12 months: ") == 0);
  CHECK(same.find("Then Palm-size box (the same).") != std::string::npos);
  all.notes.push_back(note("unserved", "palm", "some of it"));
  CHECK(ranking_sentence(equal, all) == same + " They do not serve the same: see the notes.");
}

}  // namespace
}  // namespace wattweek::report
