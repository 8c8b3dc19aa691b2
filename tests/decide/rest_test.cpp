#include "wattweek/decide/rest.hpp"

#include <doctest/doctest.h>

#include "../support/about.hpp"
#include "../support/study_text.hpp"

namespace wattweek::decide {
namespace {

using tests::about;
using tests::kFlatTariff;
using tests::kYear2027;
using tests::Reckoned;

const std::string kFilms = R"(
[[workload]]
id = "films"
use = [ { hours = "22:00-24:00", share = 0.5 } ]
)";

const std::string kBox = R"(
[[candidate]]
id = "box"
[[candidate.device]]
watts = { idle = 10, sleep = 2, off = 1 }
increments = { films = 4 }
)";

RestPlan off(int from_hour, int to_hour) {
  return {0, {0}, {from_hour * 60, to_hour * 60}, model::RestState::off};
}

RestResult rested(const std::string& text, const RestPlan& plan) {
  const Reckoned got = tests::reckon(text);
  auto result = rest(got.study, got.zone, got.result, plan);
  REQUIRE(std::holds_alternative<RestResult>(result));
  return std::get<RestResult>(std::move(result));
}

TEST_CASE("rest: off for five hours a night saves the idle watts less those that off draws") {
  const RestResult result = rested(kYear2027 + kFlatTariff + kFilms + kBox, off(1, 6));
  CHECK(result.saves_kwh == about(0.009 * 5 * 365));
  CHECK(result.saves_cost == about(0.009 * 5 * 365 * 0.3));
  CHECK(result.without.resting_device_hours == about(0));
  CHECK(result.with.resting_device_hours == about(5 * 365));
  CHECK(result.with.unit_hours[0].unserved == about(0));
  CHECK_FALSE(result.saves_present_cost.has_value());
}

TEST_CASE("rest: asleep it draws its sleep watts") {
  RestPlan plan = off(1, 6);
  plan.state = model::RestState::sleep;
  CHECK(rested(kYear2027 + kFlatTariff + kFilms + kBox, plan).saves_kwh == about(0.008 * 5 * 365));
}

TEST_CASE("rest: over midnight, and what is in use then goes unserved") {
  const RestResult result = rested(kYear2027 + kFlatTariff + kFilms + kBox, off(23, 6));
  CHECK(result.without.unit_hours[0].unserved == about(0));
  CHECK(result.with.unit_hours[0].unserved == about(365 * 0.5));
  CHECK(result.with.unit_hours[0].served == about(365 * 0.5));
  CHECK(result.saves_kwh == about(365 * (0.009 * 7 + 0.004 * 0.5)));
}

TEST_CASE("rest: the result is what a file with the rest written into it gives") {
  const std::string before = kYear2027 + kFlatTariff + kFilms + kBox;
  const std::string own = R"(rest = [ { hours = "02:00-04:00", state = "sleep" })";
  const RestResult result = rested(before + own + "]", off(22, 5));
  const Reckoned by_hand =
      tests::reckon(before + own + R"(, { hours = "22:00-05:00", state = "off" } ])");
  const CandidateResult& should_be = by_hand.result.candidates[0];
  CHECK(result.with.energy_kwh == about(units::in_kilowatt_hours(should_be.energy)));
  CHECK(result.with.cost == about(units::in_currency(should_be.cost.cost)));
  CHECK(result.with.unit_hours[0].unserved == about(should_be.ledger.unit_hours[0].unserved));
}

TEST_CASE("rest: the device's own rest comes first") {
  const RestResult result = rested(kYear2027 + kFlatTariff + kFilms + kBox +
                                       R"(rest = [ { hours = "01:00-06:00", state = "sleep" } ])",
                                   off(1, 6));
  CHECK(result.saves_kwh == 0);
  CHECK(result.saves_cost == 0);
}

TEST_CASE("rest: the household's own use stays what it was with the machine always on") {
  // 10 W are 7.44 kWh in January. The household's own use reaches into the second block.
  const std::string blocks = R"(
[tariff]
currency = "EUR"
band = [ { name = "all", price = 0.2 } ]
block = [ { up_to = 102, price = 0 }, { price = 0.1 } ]
)";
  const std::string month = kYear2027 + "months = 1\n";
  const RestResult metered =
      rested(month +
                 "household = { kwh_per_month = [107.44, 107, 107, 107, 107, 107, 107, 107, 107, "
                 "107, 107, 107], includes = \"box\" }\n" +
                 blocks + kBox,
             off(0, 12));
  const RestResult own =
      rested(month +
                 "household = { kwh_per_month = [100, 0, 0, 0, 0, 0, 0, 0, 0, 0, "
                 "0, 0] }\n" +
                 blocks + kBox,
             off(0, 12));
  CHECK(metered.with.cost == about(own.with.cost));
  CHECK(metered.saves_cost == about(own.saves_cost));
}

TEST_CASE("rest: half a year's saving counts twice for a year, a horizon makes it present") {
  CHECK(rested(kYear2027 + "months = 6\n" + kFlatTariff + kBox, off(1, 6)).saves_kwh ==
        about(2 * 0.009 * 5 * 181));
  CHECK(rested(kYear2027 + "finance = { years = 4 }\n" + kFlatTariff + kBox, off(1, 6))
            .saves_present_cost.value() == about(4 * 0.009 * 5 * 365 * 0.3));
}

TEST_CASE("rest: only what has sleep watts can sleep") {
  const Reckoned got = tests::reckon(kYear2027 + kFlatTariff + kBox +
                                     "[[candidate.device]]\nwatts = { idle = 3 }\n");
  CHECK(can_sleep(got.study.candidates[0], {0}));
  CHECK_FALSE(can_sleep(got.study.candidates[0], {0, 1}));
}

}  // namespace
}  // namespace wattweek::decide
