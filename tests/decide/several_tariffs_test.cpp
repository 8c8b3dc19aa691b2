#include "wattweek/decide/several_tariffs.hpp"

#include <doctest/doctest.h>

#include "../support/about.hpp"
#include "../support/study_text.hpp"

namespace wattweek::decide {
namespace {

using tests::about;
using tests::kYear2027;

// 876 kWh a year at no purchase against 87.6 kWh for 300.
const std::string kRackAndPalm =
    "[[candidate]]\nid = \"rack\"\n[[candidate.device]]\nwatts = { idle = 100 }\n"
    "[[candidate]]\nid = \"palm\"\npurchase = 300\n[[candidate.device]]\nwatts = { idle = 10 }\n";

std::string tariff(const std::string& name, const std::string& currency, double price) {
  return "[tariff]\nname = \"" + name + "\"\ncurrency = \"" + currency +
         "\"\n[[tariff.band]]\nname = \"all\"\nprice = " + std::to_string(price) + "\n";
}

UnderTariff under(const std::string& path, const std::string& head, const std::string& contract,
                  const std::string& boxes = kRackAndPalm) {
  const tests::Reckoned all = tests::reckon(kYear2027 + head + contract + boxes);
  return {path, all.study, all.result};
}

const std::string kTwoYears = "[finance]\nyears = 2\n";

TEST_CASE("several tariffs: over a horizon each contract has its best by present cost") {
  const SeveralTariffs all = under_each({under("a", kTwoYears, tariff("dear", "EUR", 0.3)),
                                         under("b", kTwoYears, tariff("cheap", "EUR", 0.1))});
  CHECK(all.yardstick.criterion == Criterion::present_cost);
  CHECK(all.years == 2);
  CHECK(all.rows[0].tariff == "dear");
  CHECK(all.rows[0].best == 1);
  CHECK(all.rows[0].criteria[0] == about(525.6));   // 2 * 0.3 * 876
  CHECK(all.rows[0].criteria[1] == about(352.56));  // 300 + 2 * 0.3 * 87.6
  CHECK(all.rows[1].best == 0);
  CHECK(all.rows[1].criteria[0] == about(175.2));
  CHECK(all.rows[1].criteria[1] == about(317.52));
}

TEST_CASE("several tariffs: without a horizon purchases that differ leave nothing to rank by") {
  const UnderTariff a = under("a", "", tariff("one", "EUR", 0.3));
  const UnderTariff b = under("b", "", tariff("two", "EUR", 0.1));
  CHECK(yardstick_of({&a.study, &b.study}).criterion == Criterion::none);
}

TEST_CASE("several tariffs: where currencies differ the year's cost alone decides") {
  const SeveralTariffs all = under_each({under("a", kTwoYears, tariff("home", "EUR", 0.1)),
                                         under("b", kTwoYears, tariff("abroad", "JPY", 30))});
  CHECK(all.yardstick.is_year_alone);
  CHECK(!all.years);
  CHECK(all.rows[0].best == 1);  // By present cost it would be the rack.
  CHECK(all.rows[0].criteria[1] == about(8.76));
  CHECK(all.rows[1].criteria[0] == about(26280));
}

TEST_CASE("several tariffs: the year's cost of a shorter study is scaled up from its months") {
  const SeveralTariffs all = under_each({under("a", "months = 6\n", tariff("home", "EUR", 0.1)),
                                         under("b", "months = 6\n", tariff("abroad", "USD", 0.2))});
  CHECK(all.rows[0].criteria[1] == about(0.1 * 0.01 * 181 * 24 * 2));
}

TEST_CASE("several tariffs: two of one name are told apart by their paths, and others are not") {
  const SeveralTariffs all =
      under_each({under("a/flat.toml", kTwoYears, tariff("flat", "EUR", 1)),
                  under("n.toml", kTwoYears, tariff("night", "EUR", 2)),
                  under("b/flat.toml", kTwoYears, tariff("flat", "EUR", 3))});
  CHECK(all.rows[0].tariff == "a/flat.toml");
  CHECK(all.rows[1].tariff == "night");
  CHECK(all.rows[2].tariff == "b/flat.toml");
}

TEST_CASE(
    "several tariffs: of equal candidates the first is best, and that it is shared is known") {
  const std::string boxes =
      "[[candidate]]\nid = \"a\"\n[[candidate.device]]\nwatts = { idle = 10 }\n"
      "[[candidate]]\nid = \"b\"\n[[candidate.device]]\nwatts = { idle = 20 }\n";
  const SeveralTariffs all = under_each({under("a", "", tariff("free", "EUR", 0), boxes),
                                         under("b", "", tariff("paid", "EUR", 1), boxes)});
  CHECK(all.yardstick.criterion == Criterion::cost);
  CHECK(all.rows[0].best == 0);
  CHECK(all.rows[0].is_shared);
  CHECK(!all.rows[1].is_shared);
}

}  // namespace
}  // namespace wattweek::decide
