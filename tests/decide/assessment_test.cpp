// Identities and refusals of whole studies.

#include "wattweek/decide/assessment.hpp"

#include <doctest/doctest.h>

#include "../support/about.hpp"
#include "../support/study_text.hpp"
#include "wattweek/decide/break_even.hpp"

using namespace wattweek;
using namespace wattweek::tests;

namespace {

const std::string kTwins = kYear2027 + kFlatTariff + R"(
[finance]
years = 5
discount_rate = 0.03
[[workload]]
id = "film"
use = [ { hours = "20:00-22:00", units = 3, share = 0.4, pattern = "independent" } ]
[[candidate]]
id = "one"
purchase = 100
[[candidate.device]]
watts = { idle = 10, max = 15 }
increments = { film = 3 }
[[candidate]]
id = "two"
purchase = 100
[[candidate.device]]
watts = { idle = 10, max = 15 }
increments = { film = 3 }
)";

std::vector<std::string> refusals(const std::string& text) {
  const read::StudyInput input = read_study(text);
  const auto assessed = decide::assess(input.study, input.zone);
  std::vector<std::string> texts;
  if (const auto* problems = std::get_if<std::vector<diag::Diagnostic>>(&assessed)) {
    for (const auto& problem : *problems) texts.push_back(diag::to_text(problem));
  }
  return texts;
}

}  // namespace

TEST_CASE("a candidate against its twin saves nothing, and both cost the same at today's prices") {
  const decide::ComparisonRow row = reckon(kTwins).result.rows.at(0);
  CHECK(row.saves_kwh == 0);
  CHECK(row.saves_cost == 0);
  CHECK(row.extra_purchase == 0);
  CHECK(row.payback_years == 0.0);
  CHECK(row.discounted_payback_years == 0.0);
  CHECK(row.saves_present_cost == 0.0);
  CHECK(row.break_even_price_factor == 1.0);
}

TEST_CASE("months, bands, states, causes and devices all add up to the same energy") {
  const Reckoned got = reckon(kTwins);
  const decide::CandidateResult& one = got.result.candidates[0];
  double states_kwh = 0, device_hours = 0;
  for (const auto& state : one.ledger.states) {
    states_kwh += state.energy_kwh;
    device_hours += state.device_hours;
  }
  const double kwh = units::in_kilowatt_hours(one.energy);
  CHECK(states_kwh == about(kwh));
  CHECK(device_hours == about(8760));
  CHECK(one.ledger.devices[0].energy_kwh == about(kwh));
  double causes = 0;
  for (const units::Money cost : one.cost.by_cause) causes += units::in_currency(cost);
  CHECK(causes == about(units::in_currency(one.cost.cost)));
}

TEST_CASE("a household month that the metered machine leaves below zero is refused") {
  const auto got = refusals(kYear2027 + kFlatTariff + R"(
[household]
kwh_per_month = [100, 100, 100, 100, 100, 100, 100, 100, 100, 100, 71, 100]
includes = "old"
[[candidate]]
id = "old"
[[candidate.device]]
watts.idle = 100
)");
  REQUIRE(got.size() == 1);
  CHECK(got[0] ==
        "study.toml:13:12: error: household.includes: in 2027-11 the candidate 'old' draws 72 kWh, "
        "but "
        "the household was metered with 71 kWh; expected a household that uses at least what the "
        "candidate draws");
}

TEST_CASE(
    "more joint outcomes than can be merged are refused with device, local time and workloads") {
  std::string text = kYear2027 + kFlatTariff;
  std::string increments;
  for (int i = 0; i < 21; ++i) {
    const std::string id = "s" + std::to_string(i);
    text += "[[workload]]\nid = \"" + id +
            "\"\nuse = [ { days = \"sat\", hours = \"20:00-21:00\", share = 0.5 } ]\n";
    increments += id + " = " + std::to_string(1 << i) + ".001\n";
  }
  text += "[[candidate]]\nid = \"box\"\n[[candidate.device]]\nname = \"big\"\n";
  text += "watts = { idle = 1, max = 2 }\n[candidate.device.increments]\n" + increments;
  const auto got = refusals(text);
  REQUIRE(got.size() == 1);
  CHECK(got[0].find("device 'big' of candidate 'box': on 2027-01-02 20:00 the units in use of "
                    "'s0', 's1', ") != std::string::npos);
  CHECK(got[0].find(" have more than 1048576 joint outcomes with different sums") !=
        std::string::npos);
}

TEST_CASE("figures beyond all measure are refused, not printed as infinite") {
  const auto got = refusals(kYear2027 + kFlatTariff +
                            "[finance]\nyears = 30\nprice_rise = 1e6\ndiscount_rate = -0.99999\n" +
                            "[[candidate]]\nid = \"sun\"\n[[candidate.device]]\nwatts.idle = 10\n");
  REQUIRE(got.size() == 1);
  CHECK(got[0].find("candidate 'sun': its figures are too large to be reckoned") !=
        std::string::npos);
}
