#include "wattweek/decide/payback_target.hpp"

#include <doctest/doctest.h>

#include "../support/about.hpp"
#include "../support/study_text.hpp"

namespace wattweek::decide {
namespace {

using tests::about;

std::string study(const std::string& finance, double purchase, const std::string& more = "") {
  return tests::kYear2027 + finance + tests::kFlatTariff +
         "[[candidate]]\nid = \"rack\"\npurchase = 40\n[[candidate.device]]\n"
         "watts = { idle = 100 }\n[[candidate]]\nid = \"palm\"\npurchase = " +
         std::to_string(purchase) + "\n" + more + "[[candidate.device]]\nwatts = { idle = 10 }\n";
}

PaybackTarget target(const std::string& text, int years) {
  const tests::Reckoned all = tests::reckon(text);
  return payback_targets(all.study, all.result, years).rows.at(0);
}

TEST_CASE("payback target: what is saved in so many years, on top of what the baseline fetches") {
  const PaybackTarget plain = target(study("", 300), 2);
  CHECK(plain.candidate == 1);
  CHECK(plain.purchase == about(40 + 2 * 236.52));
  CHECK(!plain.discounted_purchase);
}

TEST_CASE("payback target: bought at that price it has paid back in just that time") {
  const std::string finance = "[finance]\nyears = 6\ndiscount_rate = 0.04\nprice_rise = 0.02\n";
  const std::string disk = "later = [{ year = 5, cost = 120 }]\n";
  for (const int years : {1, 3, 4, 6}) {
    CAPTURE(years);
    const PaybackTarget found = target(study(finance, 300, disk), years);
    REQUIRE(found.discounted_purchase);
    const tests::Reckoned all =
        tests::reckon(study(finance, *found.discounted_purchase - 1e-5, disk));
    REQUIRE(all.result.rows[0].discounted_payback_years);
    CHECK(*all.result.rows[0].discounted_payback_years <= years);
    const tests::Reckoned dearer =
        tests::reckon(study(finance, *found.discounted_purchase + 1e-3, disk));
    const auto later = dearer.result.rows[0].discounted_payback_years;
    CHECK((!later || *later > years));
  }
}

TEST_CASE("payback target: beyond the horizon nothing is known with discounting") {
  CHECK(!target(study("[finance]\nyears = 3\n", 300), 4).discounted_purchase);
}

}  // namespace
}  // namespace wattweek::decide
