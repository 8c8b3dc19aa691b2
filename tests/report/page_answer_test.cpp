#include "page_answer.hpp"

#include <doctest/doctest.h>
#include <fmt/format.h>

#include "fixture.hpp"

namespace wattweek::report {
namespace {

std::string said(const model::Study& study, const decide::Assessment& all) {
  return fmt::format("{}", fmt::join(answer(shown(study, all)), " "));
}

model::Study with_finance() {
  model::Study made = study();
  made.finance = model::Finance{5, 0.02, 0.0};
  return made;
}

decide::Assessment drawn(double cheapest) {
  decide::Assessment all = with_horizon();
  all.uncertainty = decide::Uncertainty{};
  all.uncertainty->draws = 1024;
  all.uncertainty->candidates.resize(2);
  all.uncertainty->candidates[0] = {
      {}, {300, 5, 290, 300, 310}, decide::Spread{1400, 25, 1350, 1400, 1450}, 1 - cheapest, 25};
  all.uncertainty->candidates[1] = {
      {}, {30, 2, 26, 30, 34}, decide::Spread{420, 10, 400, 420, 440}, cheapest, 10};
  return all;
}

TEST_CASE("answer: which one costs least over the horizon, and how far ahead it is") {
  CHECK(said(with_finance(), with_horizon()) ==
        "Palm-size box costs least over 5 years: 420 EUR for buying and running it, 980 EUR less "
        "than Rack server. To run, it takes 270 EUR a year less than Rack server.");
}

TEST_CASE("answer: where figures are ranges, how often the best stays the best") {
  CHECK(said(with_finance(), drawn(0.74)) ==
        "Palm-size box costs least over 5 years: 420 EUR (400 to 440) for buying and running it, "
        "980 EUR less than Rack server. To run, it takes 270 EUR a year less than Rack server, and "
        "in 74 % of the trials with the uncertain figures it is the cheapest.");
  CHECK(said(with_finance(), drawn(1)) ==
        "Palm-size box costs least over 5 years: 420 EUR (400 to 440) for buying and running it, "
        "980 EUR less than Rack server. To run, it takes 270 EUR a year less than Rack server, and "
        "in all trials with the uncertain figures it stays the cheapest.");
}

TEST_CASE("answer: where the baseline is the best, nothing is said against the baseline") {
  decide::Assessment all = with_horizon();
  all.candidates[1].lifetime->present_cost = 1450;
  CHECK(said(with_finance(), all) ==
        "Rack server costs least over 5 years: 1400 EUR for buying and running it, 50 EUR less "
        "than Palm-size box.");
}

TEST_CASE("answer: without years, purchases that differ leave no best") {
  CHECK(said(study(), assessment()) ==
        "Palm-size box costs least to run: 30 EUR a year. Which one is best cannot be said yet: to "
        "buy they differ, and for how many years they are kept is not said (finance.years in the "
        "study).");
}

TEST_CASE("answer: without years, equal purchases are ranked by the bill") {
  model::Study same = study();
  same.candidates[1].purchase = units::money(0);
  CHECK(said(same, assessment()) ==
        "Palm-size box costs least: 30 EUR a year on the electricity bill, 270 EUR less than Rack "
        "server. To run, it takes 270 EUR a year less than Rack server.");
}

TEST_CASE("answer: of one machine alone, what it costs and what it draws with nobody using it") {
  model::Study one = study();
  one.candidates.resize(1);
  decide::Assessment all = assessment();
  all.candidates.resize(1);
  all.rows.clear();
  CHECK(said(one, all) ==
        "Rack server adds 300 EUR a year to the electricity bill. It draws 1000 kWh a year, 114 W "
        "on average; 91 W of these are there with nobody using it.");
}

TEST_CASE("answer: candidates that do not serve the same are not compared without a word") {
  decide::Assessment all = with_horizon();
  all.notes = {note("unserved", "palm", "12 stream-hours go unserved")};
  CHECK(answer(shown(with_finance(), all)).back() ==
        "But not all of the work is done alike: see the notes.");
}

}  // namespace
}  // namespace wattweek::report
