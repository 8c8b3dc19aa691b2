// One study under several contracts, in words and for other programs.

#include <doctest/doctest.h>

#include <nlohmann/json.hpp>

#include "../support/widest_line.hpp"
#include "fixture.hpp"

namespace wattweek::report {
namespace {

using Json = nlohmann::ordered_json;
using AllUnder = std::vector<decide::UnderTariff>;

decide::UnderTariff under(const std::string& name, const std::string& currency,
                          decide::Assessment all) {
  decide::UnderTariff made{name + ".toml", study(), std::move(all)};
  made.study.tariff.name = name;
  made.study.tariff.currency = currency;
  if (made.assessment.candidates[0].lifetime) made.study.finance = model::Finance{5, {}, {}};
  return made;
}

/// Under the second contract electricity is so cheap that the rack stays ahead.
AllUnder two_contracts() {
  decide::Assessment cheap = with_horizon();
  cheap.candidates[0].cost.cost = units::money(50);
  cheap.candidates[0].lifetime = {5, 0, 250, 0, 0, 250, 240};
  return {under("Day and night", "EUR", with_horizon()), under("Cheap", "EUR", cheap)};
}

/// The same without a horizon, in two currencies.
AllUnder two_currencies() {
  return {under("Home", "EUR", assessment()), under("Abroad", "JPY", assessment())};
}

std::string text_of(const AllUnder& all, int columns = 80) {
  return tariffs_text(all, decide::under_each(all), {columns, false});
}

bool holds(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

TEST_CASE("tariffs text: a row for each contract, its best in words, and what changes") {
  CHECK(holds(text_of(two_contracts()),
              "Hall cupboard\n"
              "2027-01-01 to 2027-12-31, 365 days, 8760 hours, Europe/Dublin\n"
              "Cost over 5 years of each candidate under each contract: purchase, electricity\n"
              "and later costs less resale, each at its present value.\n"
              "\n"
              "               in      rack    palm  best\n"
              "Day and night  EUR  1400.00  420.00  palm\n"
              "Cheap          EUR   240.00  420.00  rack\n"
              "\n"
              "Over 5 years, all at present value, Rack server costs least under 1 of 2\n"
              "contracts; under Day and night (by 980.00 EUR) it is Palm-size box.\n"
              "- rack: Rack server, the baseline, 1000.0 kWh a year\n"
              "- palm: Palm-size box, 100.0 kWh a year\n"
              "\n"
              "Bear in mind\n"));
}

TEST_CASE("tariffs text: amounts of different currencies are not held against each other") {
  const std::string text = text_of(two_currencies());
  CHECK(holds(text,
              "What each candidate adds to a year's electricity bill, under each contract. The\n"
              "currencies differ, so purchases and other costs over the years are left out.\n"
              "\n"
              "        in     rack   palm  best\n"
              "Home    EUR  300.00  30.00  palm\n"
              "Abroad  JPY     300     30  palm\n"));
  CHECK(holds(
      text, "By the year's electricity alone, Palm-size box costs least under both contracts.\n"));
}

TEST_CASE("tariffs text: without a horizon the time over which is compared is the study's") {
  AllUnder all{under("A", "EUR", assessment()), under("B", "EUR", assessment())};
  for (decide::UnderTariff& each : all) each.study.candidates[1].purchase = units::money(0);
  CHECK(holds(text_of(all),
              "What each candidate adds to the electricity bill over 12 months, under"));
  CHECK(holds(text_of(all), "Over 12 months, Palm-size box costs least under both contracts."));
}

TEST_CASE("tariffs text: where candidates cost the same the row and the verdict say so") {
  AllUnder all = two_currencies();
  all[1].assessment.candidates[0].cost.cost = units::money(30);
  const std::string text = text_of(all);
  CHECK(holds(text, "Abroad  JPY      30     30  rack (equal)\n"));
  CHECK(holds(text, " Of equal ones the first in"));
}

TEST_CASE("tariffs text: what holds under all contracts is noted once, the rest with their names") {
  AllUnder all = two_contracts();
  all.push_back(under("Third", "EUR", with_horizon()));
  for (decide::UnderTariff& each : all) {
    each.assessment.notes = {note("skipped", "palm", "no films")};
  }
  const decide::Note minimum = note("minimum-swallows", "rack", "less than it looks");
  all[0].assessment.notes.push_back(minimum);
  all[2].assessment.notes.push_back(minimum);
  const std::string text = text_of(all);
  CHECK(holds(text,
              "\nNotes\n- palm: no films (skipped).\n"
              "- Under Day and night and Third: rack: less than it looks (minimum-swallows).\n"));
  CHECK(holds(tariffs_markdown(all, decide::under_each(all)),
              "it is Rack server. They do not serve the same: see the notes.\n"));
}

TEST_CASE("tariffs text: of many contracts the sentence tells how many, not all their names") {
  AllUnder all;
  for (const char* name : {"A", "B", "C", "D"}) all.push_back(under(name, "EUR", with_horizon()));
  for (const char* name : {"E", "F", "G", "H", "I"}) {
    all.push_back(under(name, "EUR", two_contracts()[1].assessment));
  }
  CHECK(holds(text_of(all),
              "Over 5 years, all at present value, Rack server costs least under 5 of 9\n"
              "contracts; under 4 others it is Palm-size box.\n"));
}

/// Five candidates under thirteen contracts.
AllUnder large_table(const std::string& ending) {
  AllUnder all;
  for (int t = 0; t < 13; ++t) {
    decide::UnderTariff each = two_contracts()[0];
    each.study.tariff.name = "Contract of a long name number " + std::to_string(t);
    each.study.candidates.clear();
    each.assessment.candidates.clear();
    for (const char* id : {"rack", "palm", "tower", "board", "mini"}) {
      each.study.candidates.push_back(candidate(id + ending, "Box", 100));
      each.assessment.candidates.push_back(with_horizon().candidates[0]);
    }
    all.push_back(each);
  }
  return all;
}

TEST_CASE("tariffs text: five candidates under thirteen contracts are a table of 80 columns") {
  const std::string text = text_of(large_table(""));
  CHECK(tests::widest_line(text) <= 80);
  CHECK(holds(text, "  in      rack     palm    tower    board     mini  best\n"));
}

TEST_CASE("tariffs text: ids too long to head the columns give way to letters") {
  const std::string text = text_of(large_table("-of-the-hall"));
  CHECK(tests::widest_line(text) <= 80);
  CHECK(holds(text, "  in         A        B        C        D        E  best\n"));
  CHECK(holds(text, "\n- C, tower-of-the-hall: Box, 1000.0 kWh a year\n"));
}

TEST_CASE("tariffs text: a single candidate has costs and no verdict") {
  AllUnder all = two_contracts();
  for (decide::UnderTariff& each : all) {
    each.study.candidates.pop_back();
    each.assessment.candidates.pop_back();
  }
  CHECK(!holds(text_of(all), "costs least"));
  CHECK(holds(text_of(all), "Cheap          EUR   240.00  rack\n"));
}

TEST_CASE("tariffs markdown: the table can be pasted under an article") {
  const AllUnder all = two_contracts();
  CHECK(holds(tariffs_markdown(all, decide::under_each(all)),
              "## Hall cupboard\n\n"
              "2027-01-01 to 2027-12-31, 365 days, 8760 hours, Europe/Dublin\n\n"
              "Cost over 5 years of each candidate under each contract: purchase, electricity and "
              "later costs less resale, each at its present value.\n\n"
              "| | in | rack | palm | best |\n"
              "| :-- | :-- | --: | --: | :-- |\n"
              "| Day and night | EUR | 1400.00 | 420.00 | palm |\n"
              "| Cheap | EUR | 240.00 | 420.00 | rack |\n\n"));
}

TEST_CASE("tariffs csv: a line for each contract and candidate, a name is never a formula") {
  AllUnder all = two_contracts();
  all[1].study.tariff.name = "=Cheap";
  all[1].assessment.notes = {note("skipped", "palm", "no films")};
  CHECK(tariffs_csv(all, decide::under_each(all)) ==
        "tariff,currency,id,name,months,energy_kwh,cost,lower_bound,years,present_cost,best,"
        "notes\r\n"
        "\"Day and night\",\"EUR\",\"rack\",\"Rack server\",12,1000,300,false,5,1400,false,\"\"\r\n"
        "\"Day and night\",\"EUR\",\"palm\",\"Palm-size box\",12,100,30,false,5,420,true,\"\"\r\n"
        "\"'=Cheap\",\"EUR\",\"rack\",\"Rack server\",12,1000,50,false,5,240,true,\"\"\r\n"
        "\"'=Cheap\",\"EUR\",\"palm\",\"Palm-size box\",12,100,30,false,5,420,false,"
        "\"skipped: no films\"\r\n");
}

TEST_CASE("tariffs csv: where currencies differ horizon and present cost are empty") {
  const AllUnder all = two_currencies();
  CHECK(holds(tariffs_csv(all, decide::under_each(all)),
              "\"Abroad\",\"JPY\",\"palm\",\"Palm-size box\",12,100,30,false,,,true,\"\"\r\n"));
}

TEST_CASE("tariffs json: every row has its currency, its best, and the present cost or null") {
  const AllUnder with = two_contracts();
  const Json all = Json::parse(tariffs_json(with, decide::under_each(with)));
  CHECK(all["format"] == "wattweek-tariffs-1");
  CHECK(all["criterion"] == "present_cost");
  CHECK(all["years"] == 5);
  CHECK(all["rows"][1].dump() ==
        R"({"tariff":"Cheap","currency":"EUR","best":"rack","candidates":[)"
        R"({"id":"rack","energy_kwh":1000.0,"cost":50.0,"lower_bound":false,"present_cost":240.0},)"
        R"({"id":"palm","energy_kwh":100.0,"cost":30.0,"lower_bound":false,"present_cost":420.0}],)"
        R"("notes":[]})");
  const AllUnder without = two_currencies();
  const Json bare = Json::parse(tariffs_json(without, decide::under_each(without)));
  CHECK(bare["criterion"] == "year_cost");
  CHECK(bare["years"].is_null());
  CHECK(bare["rows"][0]["candidates"][0]["present_cost"].is_null());
}

}  // namespace
}  // namespace wattweek::report
