#include "wattweek/decide/ranking.hpp"

#include <doctest/doctest.h>
#include <fmt/format.h>

#include "../support/about.hpp"
#include "../support/study_text.hpp"

namespace wattweek::decide {
namespace {

using tests::about;
using tests::kFlatTariff;
using tests::kYear2027;

std::string box(const std::string& id, double idle_w, double purchase) {
  return "[[candidate]]\nid = \"" + id + "\"\npurchase = " + fmt::format("{:.9f}", purchase) +
         "\n[[candidate.device]]\nwatts = { idle = " + std::to_string(idle_w) + " }\n";
}

std::optional<std::vector<Ranked>> ranked(const std::string& finance, const std::string& boxes) {
  const tests::Reckoned all = tests::reckon(kYear2027 + finance + kFlatTariff + boxes);
  return ranking(all.study, all.result);
}

TEST_CASE("ranking: over the horizon the lowest present cost is best") {
  const auto all = ranked("[finance]\nyears = 2\n",
                          box("rack", 100, 0) + box("palm", 10, 300) + box("tower", 30, 100));
  REQUIRE(all);
  REQUIRE(all->size() == 3);
  CHECK(all->at(0).candidate == 2);  // 100 + 2 * 0.3 * 262.8
  CHECK(all->at(0).criterion == about(257.68));
  CHECK(all->at(1).candidate == 1);  // 300 + 2 * 0.3 * 87.6
  CHECK(all->at(1).criterion == about(352.56));
  CHECK(all->at(2).candidate == 0);  // 2 * 0.3 * 876
  CHECK(all->at(2).criterion == about(525.6));
}

TEST_CASE("ranking: without a horizon equal purchases are ranked by the study's cost") {
  const auto all = ranked("", box("rack", 100, 50) + box("palm", 10, 50));
  REQUIRE(all);
  CHECK(all->at(0).candidate == 1);
  CHECK(all->at(0).criterion == about(26.28));
}

TEST_CASE("ranking: without a horizon purchases that differ have no ranking") {
  CHECK(!ranked("", box("rack", 100, 0) + box("palm", 10, 300)));
}

TEST_CASE("ranking: of equal candidates the first in the file is the better") {
  const auto all = ranked("", box("one", 10.000000001, 0) + box("two", 10, 0) + box("three", 9, 0));
  REQUIRE(all);
  CHECK(all->at(0).candidate == 2);
  CHECK(all->at(1).candidate == 0);
  CHECK(all->at(2).candidate == 1);
}

TEST_CASE("ranking: the best is the lowest, and of equal ones the first") {
  CHECK(best_of({3}) == 0);
  CHECK(best_of({3, 1, 2}) == 1);
  CHECK(best_of({2, 1, 1}) == 1);
  CHECK(best_of({5, 5, 5}) == 0);
  CHECK(best_of({-1, -3, 2}) == 1);
  CHECK(best_of({0, 0}) == 0);
  CHECK(best_of({1, 0}) == 1);
}

TEST_CASE("ranking: equal is within 1e-9 of the lowest, whatever its sign") {
  CHECK(best_of({100.00000009, 100}) == 0);
  CHECK(best_of({100.0000002, 100}) == 1);
  CHECK(best_of({-99.99999991, -100}) == 0);
  CHECK(best_of({-99.9999998, -100}) == 1);
  // Each within 1e-9 of the next: what counts is the lowest.
  CHECK(best_of({100.00000016, 100.00000008, 100}) == 1);
}

TEST_CASE("ranking: the criterion is the present cost with a horizon, and without one the cost") {
  const auto criterion = [](const std::string& finance, const std::string& boxes) {
    return criterion_of(tests::read_study(kYear2027 + finance + kFlatTariff + boxes).study);
  };
  const std::string years = "[finance]\nyears = 2\n";
  const std::string equal = box("one", 9, 100) + box("two", 8, 100.00000005);
  const std::string unequal = box("one", 9, 100) + box("two", 8, 100.0000002);
  CHECK(criterion(years, equal) == Criterion::present_cost);
  CHECK(criterion(years, unequal) == Criterion::present_cost);
  CHECK(criterion("", equal) == Criterion::cost);
  CHECK(criterion("", unequal) == Criterion::none);
  CHECK(criterion("", box("one", 9, 100)) == Criterion::cost);
  CHECK(criterion("[finance]\nprice_rise = 0.1\n", unequal) == Criterion::none);
}

}  // namespace
}  // namespace wattweek::decide
