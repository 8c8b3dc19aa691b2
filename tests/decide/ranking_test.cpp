#include "wattweek/decide/ranking.hpp"

#include <doctest/doctest.h>

#include "../support/about.hpp"
#include "../support/study_text.hpp"

namespace wattweek::decide {
namespace {

using tests::about;
using tests::kFlatTariff;
using tests::kYear2027;

std::string box(const std::string& id, double idle_w, double purchase) {
  return "[[candidate]]\nid = \"" + id + "\"\npurchase = " + std::to_string(purchase) +
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

}  // namespace
}  // namespace wattweek::decide
