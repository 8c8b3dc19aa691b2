#include <doctest/doctest.h>

#include "fixture.hpp"

namespace wattweek::report {
namespace {

TEST_CASE("csv: one row for each candidate, full precision, lines end as RFC 4180 says") {
  CHECK(csv(study(), assessment(), Scope::estimate) ==
        "id,name,months,energy_kwh,mean_w,highest_w,base_kwh,currency,cost,base_cost,blocks_cost,"
        "minimum_cost,co2_kg,lower_bound,purchase,years,total,present_cost,notes\r\n"
        "\"rack\",\"Rack server\",12,1000,114.15525114155251,60,800,\"EUR\",300,270,0,0,,false,0,,,"
        ",\"\"\r\n"
        "\"palm\",\"Palm-size box\",12,100,11.415525114155251,60,80,\"EUR\",30,27,0,0,,false,300,,,"
        ",\"\"\r\n");
}

TEST_CASE("csv: compare adds the figures against the baseline, whose own are empty") {
  CHECK(csv(study(), with_horizon(), Scope::compare) ==
        "id,name,months,energy_kwh,mean_w,highest_w,base_kwh,currency,cost,base_cost,blocks_cost,"
        "minimum_cost,co2_kg,lower_bound,purchase,years,total,present_cost,baseline,"
        "saves_kwh_a_year,saves_cost_a_year,extra_purchase,payback_years,overtaken_years,"
        "discounted_payback_years,saves_present_cost,break_even_price_factor,notes\r\n"
        "\"rack\",\"Rack server\",12,1000,114.15525114155251,60,800,\"EUR\",300,270,0,0,,false,0,5,"
        "1500,1400,\"rack\",,,,,,,,,\"\"\r\n"
        "\"palm\",\"Palm-size box\",12,100,11.415525114155251,60,80,\"EUR\",30,27,0,0,,false,300,5,"
        "430,420,\"rack\",900,270,300,1.1111111111111112,,1.25,980,0.222,\"\"\r\n");
}

TEST_CASE("csv: a name that a spreadsheet would reckon is made a text") {
  for (const std::string start : {"=", "+", "-", "@"}) {
    model::Study named = study();
    named.candidates[0].name = start + "1+1, \"quoted\"";
    const std::string text = csv(named, assessment(), Scope::estimate);
    CHECK(text.find(",\"'" + start + "1+1, \"\"quoted\"\"\",12,") != std::string::npos);
  }
  model::Study named = study();
  named.candidates[0].name = "\t=1";
  CHECK(csv(named, assessment(), Scope::estimate).find(",\"'\\x09=1\",") != std::string::npos);
}

TEST_CASE("csv: a negative figure stays a number") {
  decide::Assessment all = assessment();
  all.candidates[0].cost.cost = units::money(-3.5);
  CHECK(csv(study(), all, Scope::estimate).find(",\"EUR\",-3.5,") != std::string::npos);
}

TEST_CASE("csv: notes about a candidate stand in its row and those about the study in every row") {
  decide::Assessment all = assessment();
  all.notes = {note("skipped", "palm", "no films"), placed_note("never-holds", "an empty window")};
  const std::string text = csv(study(), all, Scope::estimate);
  CHECK(text.find(",\"never-holds (study.toml:7:3): an empty window\"\r\n\"palm\"") !=
        std::string::npos);
  CHECK(text.find(",\"skipped: no films | never-holds (study.toml:7:3): an empty window\"\r\n") !=
        std::string::npos);
}

}  // namespace
}  // namespace wattweek::report
