// Which ranges a study has, what they are called, and which of them are one and the same.

#include "wattweek/decide/settled_study.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

#include "../support/all_ranges.hpp"
#include "../support/study_text.hpp"
#include "linked_text.hpp"
#include "wattweek/decide/scenario.hpp"

using namespace wattweek;
using namespace wattweek::decide;
using tests::Files;
using tests::kFlatTariff;
using tests::kYear2027;
using tests::read_linked;
using tests::read_study;

namespace {

using Keys = std::vector<std::string>;

Keys keys_of(const model::Study& study) { return SettledStudy(study).keys(); }

Keys sorted(Keys keys) {
  std::sort(keys.begin(), keys.end());
  return keys;
}

}  // namespace

TEST_CASE("every range of a study has its key, in the order of the file's tables") {
  // `films` has no increment: its load is compute / capacity. Nobody plays chess, and the grid's
  // carbon is no cost.
  CHECK(keys_of(read_study(tests::kAllRanges).study) ==
        Keys{"study.toml:household.kwh_per_year",
             "study.toml:finance.discount_rate",
             "study.toml:finance.price_rise",
             "study.toml:tariff.tax",
             "study.toml:tariff.standing_per_day",
             "study.toml:tariff.standing_per_month",
             "study.toml:tariff.minimum_per_month",
             "study.toml:tariff.band.night.price",
             "study.toml:tariff.band.day.price",
             "study.toml:tariff.block.1.price",
             "study.toml:tariff.block.2.price",
             "study.toml:workload.films.compute",
             "study.toml:workload.films.use.1.share",
             "study.toml:workload.films.use.2.minutes",
             "study.toml:candidate.palm.purchase",
             "study.toml:candidate.palm.resale",
             "study.toml:candidate.palm.later.2.cost",
             "study.toml:candidate.palm.device.1.watts.idle",
             "study.toml:candidate.palm.device.2.watts.off",
             "study.toml:candidate.palm.device.2.watts.sleep",
             "study.toml:candidate.palm.device.2.watts.idle",
             "study.toml:candidate.palm.device.2.watts.busy",
             "study.toml:candidate.palm.device.2.watts.max",
             "study.toml:candidate.palm.device.2.capacity",
             "study.toml:candidate.palm.device.2.groups.disks",
             "study.toml:candidate.palm.device.2.increments.music.first",
             "study.toml:candidate.palm.device.2.increments.music.each",
             "study.toml:candidate.palm.device.2.increments.mail",
             "study.toml:meter.plug.scale"});
}

TEST_CASE("a range in a profile or tariff of its own belongs to that file") {
  const Files files = {
      {"boxes/palm.toml",
       "capacity = [9, 11]\n[watts]\nidle = [8, 9]\nbusy = 20\n[groups]\ndisks = [1, 2]\n"
       "[increments]\nfilms = { load = [0.1, 0.2] }\nmusic = { first = [1, 2], group = \"disks\" "
       "}\n"},
      {"contract.toml",
       "currency = \"EUR\"\ntax = [0.1, 0.2]\n[[band]]\nname = \"all\"\nprice = [0.2, 0.4]\n"
       "[[block]]\nprice = [0.01, 0.02]\n"},
      {"/shipped/rack.toml",
       "[watts]\nidle = [60, 80]\n[increments]\nfilms = [1, 2]\nmusic = 0\n"}};
  const auto input = read_linked(kYear2027 + R"(tariff = "contract.toml"
[[workload]]
id = "films"
use = [ { share = 0.5 } ]
[[workload]]
id = "music"
use = [ { share = 0.5 } ]
[[candidate]]
id = "palm"
[[candidate.device]]
profile = "boxes/palm.toml"
[[candidate]]
id = "rack"
[[candidate.device]]
profile = "shipped:rack"
)",
                                 files);
  CHECK(sorted(keys_of(input.study)) ==
        sorted({"contract.toml:tax", "contract.toml:band.all.price", "contract.toml:block.1.price",
                "palm.toml:watts.idle", "palm.toml:capacity", "palm.toml:groups.disks",
                "palm.toml:increments.films.load", "palm.toml:increments.music.first",
                "rack.toml:watts.idle", "rack.toml:increments.films"}));
}

TEST_CASE("two files of one name are told apart by their paths") {
  const Files files = {{"old/box.toml", "[watts]\nidle = [40, 60]\n"},
                       {"new/box.toml", "[watts]\nidle = [8, 9]\n"},
                       {"/shipped/box.toml", "[watts]\nidle = [1, 2]\n"},
                       {"tray.toml", "[watts]\nidle = [3, 4]\n"}};
  std::string text = kYear2027 + kFlatTariff;
  for (const char* path : {"old/box.toml", "new/box.toml", "shipped:box", "tray.toml"}) {
    text += "[[candidate]]\nid = \"c" + std::to_string(text.size()) +
            "\"\n[[candidate.device]]\nprofile = \"" + path + "\"\n";
  }
  CHECK(sorted(keys_of(read_linked(text, files).study)) ==
        sorted({"old/box.toml:watts.idle", "new/box.toml:watts.idle",
                "/shipped/box.toml:watts.idle", "tray.toml:watts.idle"}));
}

TEST_CASE("a profile that candidates share, or that one uses twice, has its ranges once") {
  const Files files = {
      {"box.toml", "[watts]\nidle = [8, 12]\n[increments]\nfilms = [2, 4]\nmusic = [1, 3]\n"}};
  const auto input = read_linked(kYear2027 + kFlatTariff + R"(
[[workload]]
id = "films"
use = [ { share = 0.5 } ]
[[workload]]
id = "music"
use = [ { share = 0.5 } ]
[[candidate]]
id = "one"
[[candidate.device]]
profile = "box.toml"
[[candidate]]
id = "two"
[[candidate.device]]
profile = "./box.toml"
runs = ["films"]
[[candidate.device]]
profile = "box.toml"
runs = ["music"]
assists = ["films"]
)",
                                 files);
  SettledStudy settled(input.study);
  REQUIRE(settled.keys() ==
          Keys{"box.toml:watts.idle", "box.toml:increments.films", "box.toml:increments.music"});
  settled.settle(0, 1);     // Idle 12 W.
  settled.settle(1, 0);     // Films 2 W.
  settled.settle(2, 0.25);  // Music 1.5 W.
  const ScenarioPlan plan = plan_scenarios(input.study, input.zone);
  ScenarioReckoner reckoner(plan);
  std::vector<Totals> totals;
  REQUIRE(!reckoner.reckon(settled.study(), totals));
  CHECK(totals[0].energy_kwh == doctest::Approx(8.76 * (12 + 1 + 0.75)).epsilon(1e-12));
  CHECK(totals[1].energy_kwh == doctest::Approx(8.76 * (24 + 2 * 1 + 0.75)).epsilon(1e-12));
}

TEST_CASE("tables inline in the study are each a thing of their own, be their figures the same") {
  const auto input = read_study(kYear2027 + kFlatTariff + R"(
[[candidate]]
id = "one"
[[candidate.device]]
watts = { idle = [8, 12] }
[[candidate.device]]
watts = { idle = [8, 12] }
[[candidate]]
id = "two"
[[candidate.device]]
watts = { idle = [8, 12] }
)");
  SettledStudy settled(input.study);
  REQUIRE(settled.keys().size() == 3);
  settled.settle(1, 1);
  const auto idle = [&settled](std::size_t c, std::size_t d) {
    return units::in_watts(settled.study().candidates[c].devices[d].profile->idle.central());
  };
  CHECK(idle(0, 0) == 10);
  CHECK(idle(0, 1) == 12);
  CHECK(idle(1, 0) == 10);
}

TEST_CASE("a settled range stands at its low end, its high end or between, and can be moved") {
  const auto input = read_study(tests::kAllRanges);
  SettledStudy settled(input.study);
  const auto& keys = settled.keys();
  const auto find = [&keys](const std::string& key) {
    return static_cast<std::size_t>(std::find(keys.begin(), keys.end(), "study.toml:" + key) -
                                    keys.begin());
  };
  const std::size_t purchase = find("candidate.palm.purchase");
  const std::size_t minutes = find("workload.films.use.2.minutes");
  const std::size_t night = find("tariff.band.night.price");
  for (const auto& [fraction, price, minutes_in_use] :
       {std::tuple{0.0, 200.0, 30.0}, {1.0, 300.0, 60.0}, {0.25, 225.0, 37.5}, {0.5, 250., 45.}}) {
    settled.settle(purchase, fraction);
    settled.settle(minutes, fraction);
    settled.settle(night, fraction);
    const model::Study& study = settled.study();
    CHECK(units::in_currency(study.candidates[0].purchase.central()) == doctest::Approx(price));
    CHECK(study.workloads[0].uses[1].share.central() == doctest::Approx(minutes_in_use / 120));
    CHECK(units::in_currency_per_kilowatt_hour(study.tariff.bands[0].price.central()) ==
          doctest::Approx(0.1 + 0.1 * fraction));
  }
  CHECK(input.study.candidates[0].purchase.low == units::money(200));  // The study is not touched.
}

TEST_CASE("the midpoints give the central result of a study with every kind of range") {
  const auto input = read_study(tests::kAllRanges);
  const Assessment central = tests::assessed(input);
  const ScenarioPlan plan = plan_scenarios(input.study, input.zone);
  ScenarioReckoner reckoner(plan);
  std::vector<Totals> totals;
  REQUIRE(!reckoner.reckon(SettledStudy(input.study).study(), totals));
  const CandidateResult& palm = central.candidates[0];
  const auto agree = [](double a, double b) { return std::fabs(a - b) <= 1e-12 * std::fabs(b); };
  CHECK(agree(totals[0].energy_kwh, units::in_kilowatt_hours(palm.energy)));
  CHECK(agree(totals[0].cost, units::in_currency(palm.cost.cost)));
  CHECK(agree(totals[0].present_cost, palm.lifetime->present_cost));
}

TEST_CASE("figures with both ends equal, and studies without ranges, have no keys") {
  CHECK(keys_of(read_study(kYear2027 + kFlatTariff + R"(
[[candidate]]
id = "box"
purchase = [100, 100]
[[candidate.device]]
watts = { idle = [8, 8] }
)")
                    .study)
            .empty());
}
