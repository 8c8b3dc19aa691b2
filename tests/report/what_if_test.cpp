#include "wattweek/report/what_if.hpp"

#include <doctest/doctest.h>

#include <nlohmann/json.hpp>

#include "fixture.hpp"

namespace wattweek::report {
namespace {

using Kind = decide::Factor::Kind;

/// Three values of a factor; the rack is the better at the first.
struct Made {
  model::Study study = report::study();
  decide::Assessment assessment = with_horizon();
  std::vector<decide::Sweep> sweeps;
  decide::Rows rows;
  std::vector<decide::Crossing> crossings{{0, 1, 0.75, 0}};

  explicit Made(decide::Factor factor) : sweeps{{factor, 0.5, 1.5, 3}} {
    rows.totals = {{1000, 150, 700}, {100, 15, 710},    {1000, 300, 1400},
                   {100, 30, 720},   {1000, 450, 2100}, {100, 45, 730}};
    rows.best = {0, 1, 1};
  }
  WhatIfShown shown() const { return {study, assessment, sweeps}; }
  std::string text() const { return what_if_text(shown(), rows, rows, crossings, {}); }
};

TEST_CASE("what if: a table, a line of the best, and where two swap places at which prices") {
  CHECK(Made({Kind::price, 0}).text() == R"(Hall cupboard: what if
What if prices per kWh (price) from 0.5 to 1.5 times today's?
The best has the lowest 5-year cost, all at present value.

              rack    palm
    price      EUR     EUR  best
0.5 times   700.00  710.00  rack
  1 times  1400.00  720.00  palm
1.5 times  2100.00  730.00  palm

Where the best changes

The best along the way:
rpp
0.5 to 1.5
r Rack server, p Palm-size box

- Below 0.75 times today's - 0.135 EUR (night), 0.27 EUR (day), tax included -
  Rack server costs less than Palm-size box, above that more.
)");
}

TEST_CASE("what if: the factor of one thing alone is said in its own unit") {
  CHECK(Made({Kind::purchase_of, 1}).text().find("Below 0.75 times today's - 225.00 EUR - Rack") !=
        std::string::npos);
  CHECK(Made({Kind::household, 0}).text().find("times today's - 83 kWh a year -") !=
        std::string::npos);
  CHECK(Made({Kind::use, 0}).text().find("Below 0.75 times today's, Rack server") !=
        std::string::npos);
}

TEST_CASE("what if: where nothing swaps that is said, and equals are called so") {
  Made made({Kind::price, 0});
  made.crossings = {{0, 1, 0.5, {}}};
  CHECK(made.text().find("Rack server and Palm-size box cost the same all the way.") !=
        std::string::npos);
  made.crossings.clear();
  CHECK(made.text().find("No two of them swap places on the way.") != std::string::npos);
}

TEST_CASE("what if: each candidate has a letter of its own") {
  Made made({Kind::price, 0});
  made.study.candidates[1].id = "rip";
  CHECK(made.text().find("\nrii\n") != std::string::npos);
  CHECK(made.text().find("\nr Rack server, i Palm-size box\n") != std::string::npos);
}

TEST_CASE("what if: rows are the same in CSV and JSON, full digits") {
  const Made made({Kind::price, 0});
  CHECK(what_if_csv_header(made.shown()) ==
        "price,years,currency,best,energy_kwh rack,cost rack,present_cost rack,"
        "energy_kwh palm,cost palm,present_cost palm\r\n");
  CHECK(what_if_csv(made.shown(), made.rows) ==
        "0.5,5,\"EUR\",\"rack\",1000,150,700,100,15,710\r\n"
        "1,5,\"EUR\",\"palm\",1000,300,1400,100,30,720\r\n"
        "1.5,5,\"EUR\",\"palm\",1000,450,2100,100,45,730\r\n");
  const auto json = nlohmann::json::parse(what_if_json_begin(made.shown()) +
                                          what_if_json(made.shown(), made.rows) +
                                          what_if_json_end(made.shown(), made.crossings));
  CHECK(json["format"] == "wattweek-whatif-1");
  CHECK(json["factors"] == nlohmann::json{"price"});
  CHECK(json["rows"][2]["at"] == nlohmann::json{1.5});
  CHECK(json["rows"][2]["best"] == "palm");
  CHECK(json["rows"][2]["candidates"][0]["present_cost"] == 2100);
  CHECK(json["crossings"][0]["between"] == nlohmann::json{"rack", "palm"});
  CHECK(json["crossings"][0]["at"] == 0.75);
}

TEST_CASE("what if: without a horizon there is no present cost") {
  Made made({Kind::price, 0});
  made.assessment = assessment();
  CHECK(what_if_csv(made.shown(), made.rows).find("0.5,,\"EUR\",\"rack\",1000,150,,100,15,\r\n") ==
        0);
  CHECK(made.text().find("The best has the lowest cost of 12 months.") != std::string::npos);
  CHECK(made.text().find("150.00") != std::string::npos);
}

TEST_CASE("what if: two factors are a map, the first downwards") {
  Made made({Kind::price, 0});
  made.sweeps.push_back({{Kind::use, 0}, 0, 2, 3});
  made.rows.best = {0, 0, 1, 0, 1, 1};
  const std::string map = what_if_map(made.shown(), made.rows, 2, {});
  CHECK(map.find("\n0.5 rrp\n1.5 rpp\n    0 to 2\nr Rack server, p Palm-size box\n") !=
        std::string::npos);
}

}  // namespace
}  // namespace wattweek::report
