// Who is on when, who serves what, and in which state a device is.

#include <doctest/doctest.h>

#include <string>

#include "../support/about.hpp"
#include "../support/study_text.hpp"

using namespace wattweek;
using namespace wattweek::tests;
using energy::State;

namespace {

const energy::StateTotal& state(const Reckoned& got, State which, std::size_t candidate = 0) {
  return got.result.candidates[candidate].ledger.states[static_cast<std::size_t>(which)];
}

}  // namespace

TEST_CASE("the worked example of films on weekend evenings comes out by hand") {
  // By hand: 104 evenings of 2 h, 2 units half of the time: 208 unit-hours. 10 W x 8760 h + 5 W x
  // 208 h = 88.64 kWh, at 0.30 and 10 % tax 29.2512, of which films 0.3432.
  const Reckoned got = reckon(kYear2027 + R"(
[tariff]
currency = "EUR"
tax = 0.10
band = [ { name = "all", price = 0.30 } ]
[[workload]]
id = "film"
use = [ { days = "sat,sun", hours = "20:00-22:00", units = 2, share = 0.5 } ]
[[candidate]]
id = "box"
[[candidate.device]]
watts = { idle = 10 }
increments = { film = 5.0 }
)");
  const decide::CandidateResult& box = got.result.candidates[0];
  CHECK(units::in_kilowatt_hours(box.energy) == about(88.64));
  CHECK(units::in_currency(box.cost.cost) == about(29.2512));
  CHECK(units::in_currency(box.cost.by_cause[1]) == about(0.3432));
  CHECK(box.ledger.unit_hours[0].served == about(208));
  CHECK(state(got, State::active).device_hours == about(104));
  CHECK(state(got, State::idle).device_hours == about(8760 - 104));
  CHECK(box.ledger.highest_w == 20);
}

TEST_CASE("the first rest that holds wins") {
  const Reckoned got = reckon(kYear2027 + kFlatTariff + R"(
[[candidate]]
id = "box"
[[candidate.device]]
watts = { idle = 10, sleep = 2, off = 1 }
rest = [ { hours = "02:00-04:00", state = "sleep" }, { hours = "00:00-06:00", state = "off" } ]
)");
  CHECK(state(got, State::sleep).device_hours == 365 * 2);
  CHECK(state(got, State::off).device_hours == 365 * 4);
  CHECK(state(got, State::idle).device_hours == 365 * 18);
}

TEST_CASE("a service needs every device that takes part in it, and none of them works in vain") {
  const Reckoned got = reckon(kYear2027 + kFlatTariff + R"(
[[workload]]
id = "backup"
use = [ { hours = "00:00-04:00" } ]
[[candidate]]
id = "pair"
[[candidate.device]]
watts = { idle = 10 }
increments = { backup = 8 }
[[candidate.device]]
assists = ["backup"]
runs = []
watts = { idle = 6, sleep = 1 }
increments = { backup = 4 }
rest = [ { hours = "03:00-05:00", state = "sleep" } ]
)");
  const energy::Ledger& ledger = got.result.candidates[0].ledger;
  CHECK(ledger.unit_hours[0].served == 365 * 3);
  CHECK(ledger.unit_hours[0].unserved == 365);
  CHECK(ledger.kwh.col(1).sum() == about(12.0 * 3 * 365 / 1000));
}

TEST_CASE("identical devices multiply watts and device-hours but not the work") {
  const Reckoned got = reckon(kYear2027 + kFlatTariff + R"(
[[workload]]
id = "film"
use = [ { hours = "20:00-22:00" } ]
[[candidate]]
id = "three"
[[candidate.device]]
count = 3
watts = { idle = 10, busy = 20 }
increments = { film = { load = 1.5 } }
)");
  const energy::Ledger& ledger = got.result.candidates[0].ledger;
  CHECK(ledger.total_kwh() == about(3 * (10.0 * 22 + 20.0 * 2) * 365 / 1000));
  CHECK(ledger.unit_hours[0].served == 730);
  CHECK(ledger.devices[0].overload_hours == 730);
  CHECK(ledger.devices[0].highest_w == 60);
  CHECK(state(got, State::active).device_hours == 3 * 730);
}

TEST_CASE("the highest watts are those of one instant and not of two different ones") {
  const Reckoned got = reckon(kYear2027 + kFlatTariff + R"(
[[workload]]
id = "day"
use = [ { hours = "08:00-20:00" } ]
[[workload]]
id = "night"
use = [ { hours = "20:00-08:00" } ]
[[candidate]]
id = "two"
[[candidate.device]]
runs = ["day"]
watts.idle = 10
increments.day = 7
[[candidate.device]]
runs = ["night"]
watts.idle = 10
increments.night = 5
)");
  CHECK(got.result.candidates[0].ledger.highest_w == 27);
  CHECK(got.result.candidates[0].ledger.devices[1].highest_w == 15);
}

TEST_CASE("a meter that reads five percent too little is put right by its scale") {
  const Reckoned got = reckon(kYear2027 + kFlatTariff + R"(
[[meter]]
id = "plug"
scale = 1.05
[[candidate]]
id = "box"
[[candidate.device]]
meter = "plug"
watts.idle = 10
)");
  CHECK(units::in_watts(got.result.candidates[0].mean) == about(10.5));
}
