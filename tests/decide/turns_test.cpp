#include "wattweek/decide/turns.hpp"

#include <doctest/doctest.h>

#include <algorithm>

#include "../support/about.hpp"
#include "../support/study_text.hpp"

namespace wattweek::decide {
namespace {

using tests::about;

/// 876 kWh a year against 87.6 kWh and 300 EUR: 262.80 EUR against 26.28 EUR a year.
const std::string kRackAndPalm = tests::kYear2027 + "[finance]\nyears = 2\n" + tests::kFlatTariff +
                                 "[[candidate]]\nid = \"rack\"\n[[candidate.device]]\n"
                                 "watts = { idle = 100 }\n[[candidate]]\nid = \"palm\"\n"
                                 "purchase = 300\n[[candidate.device]]\nwatts = { idle = 10 }\n";

AllTurns turns_of(const std::string& text, unsigned threads = 1) {
  const read::StudyInput input = tests::read_study(text);
  const auto found = turns(input.study, input.zone, threads);
  REQUIRE(std::holds_alternative<AllTurns>(found));
  return std::get<AllTurns>(found);
}

const Turns& of(const AllTurns& all, Factor factor) {
  const auto found = std::find_if(all.turns.begin(), all.turns.end(),
                                  [&](const Turns& each) { return each.factor == factor; });
  REQUIRE(found != all.turns.end());
  return *found;
}

using Kind = Factor::Kind;

TEST_CASE("turns: cheap electricity, a dear purchase or a frugal rack would turn the answer") {
  const AllTurns all = turns_of(kRackAndPalm);
  CHECK(all.best == 1);
  const Turns& price = of(all, {Kind::price, 0});
  REQUIRE(price.below);
  CHECK(price.below->at == about(300 / (2 * 236.52)));
  CHECK(price.below->best == 0);
  CHECK(!price.above);
  const Turns& purchase = of(all, {Kind::purchase_of, 1});
  CHECK(!purchase.below);
  REQUIRE(purchase.above);
  CHECK(purchase.above->at == about(2 * 236.52 / 300));
  CHECK(purchase.above->best == 0);
  // The rack at 10 W + 300 EUR / (2 x 0.30 EUR x 8.76 h) is as cheap.
  const Turns& idle = of(all, {Kind::idle_of, 0});
  REQUIRE(idle.below);
  CHECK(idle.below->at == about((10 + 300 / (0.6 * 8.76)) / 100));
}

TEST_CASE("turns: what a household uses turns nothing where a kWh has one price") {
  const AllTurns all = turns_of(kRackAndPalm);
  const Turns& household = of(all, {Kind::household, 0});
  CHECK(!household.below);
  CHECK(!household.above);
}

TEST_CASE("turns: a swap among the losers is no turn") {
  const std::string middle = kRackAndPalm +
                             "[[candidate]]\nid = \"tower\"\npurchase = 60\n[[candidate.device]]\n"
                             "watts = { idle = 70 }\n";
  const AllTurns all = turns_of(middle);
  CHECK(all.best == 1);
  // From 0 on the rack, from 0.38 on the tower, from 0.76 on the palm-size box.
  const Turns& price = of(all, {Kind::price, 0});
  REQUIRE(price.below);
  CHECK(price.below->at == about(240 / (2 * 0.3 * 60 * 8.76)));
  CHECK(price.below->best == 2);
}

TEST_CASE("turns: the same on any number of threads") {
  const AllTurns one = turns_of(kRackAndPalm, 1);
  const AllTurns three = turns_of(kRackAndPalm, 3);
  REQUIRE(one.turns.size() == three.turns.size());
  for (std::size_t i = 0; i < one.turns.size(); ++i) {
    CHECK(one.turns[i].below.has_value() == three.turns[i].below.has_value());
    if (one.turns[i].below) CHECK(one.turns[i].below->at == three.turns[i].below->at);
  }
}

TEST_CASE("turns: without a horizon no purchase is looked at") {
  const AllTurns all =
      turns_of(tests::kYear2027 + tests::kFlatTariff +
               "[[candidate]]\nid = \"rack\"\n[[candidate.device]]\nwatts = { idle = 100 }\n"
               "[[candidate]]\nid = \"palm\"\n[[candidate.device]]\nwatts = { idle = 10 }\n");
  for (const Turns& each : all.turns) {
    CHECK(each.factor.kind != Kind::purchase);
    CHECK(each.factor.kind != Kind::purchase_of);
  }
}

}  // namespace
}  // namespace wattweek::decide
