// A device that draws what was measured, hour of the week by hour of the week. The sums are done
// by hand: 2027 has 53 Fridays and 52 of every other day, and begins and ends on a Friday.

#include <doctest/doctest.h>

#include <algorithm>
#include <numeric>
#include <utility>
#include <vector>

#include "../support/about.hpp"
#include "../support/study_text.hpp"
#include "../support/week_text.hpp"
#include "wattweek/calendar/study_fold.hpp"
#include "wattweek/energy/ledger.hpp"

using namespace wattweek;
using tests::about;

namespace {

constexpr std::size_t kOff = 0;
constexpr std::size_t kIdle = 2;

/// The only candidate's device, described by `device` from its name on.
std::string study_with(const std::string& device, const std::string& head = tests::kYear2027) {
  return head + tests::kFlatTariff + "[[candidate]]\nid = \"box\"\n[[candidate.device]]\n" + device;
}

std::string in_zone(const std::string& zone) {
  return "time_zone = \"" + zone + "\"\nstart = 2027-01-01\n";
}

std::string watts(const std::string& keys) { return "watts = { " + keys + " }\n"; }

const decide::CandidateResult& only(const tests::Reckoned& reckoned) {
  return reckoned.result.candidates.front();
}

double kwh_of_month(const std::string& zone, Eigen::Index month) {
  const auto reckoned = tests::reckon(study_with(watts(tests::rising_week()), in_zone(zone)));
  return only(reckoned).ledger.kwh(month, 0);  // One band: a row for each month.
}

}  // namespace

TEST_CASE("a week of 10 W in every hour is 10 W idle") {
  const std::string device = "count = 3\n";
  const auto week = tests::reckon(study_with(device + watts(tests::steady_week(10))));
  const auto idle = tests::reckon(study_with(device + watts("idle = 10")));
  const energy::Ledger& by_week = only(week).ledger;
  const energy::Ledger& by_idle = only(idle).ledger;
  CHECK(by_week.kwh == by_idle.kwh);
  CHECK(by_week.total_kwh() == about(3 * 87.6));
  CHECK(by_week.highest_w == 30.0);
  CHECK(by_week.devices.front().highest_w == 30.0);
  for (std::size_t s = 0; s < energy::kStates; ++s) {
    CHECK(by_week.states[s].device_hours == by_idle.states[s].device_hours);
    CHECK(by_week.states[s].energy_kwh == by_idle.states[s].energy_kwh);
  }
}

TEST_CASE("all that a week draws is base energy in the state idle") {
  const auto reckoned = tests::reckon(study_with(watts(tests::rising_week())));
  const energy::Ledger& ledger = only(reckoned).ledger;
  // 52 weeks of 1 + 2 + ... + 168 = 14196 Wh, and a Friday of 576 * 4 + 300 = 2604 Wh.
  CHECK(ledger.kwh.col(0).sum() == about(740.796));
  CHECK(ledger.states[kIdle].device_hours == about(8760));
  CHECK(ledger.states[kIdle].energy_kwh == about(740.796));
  CHECK(ledger.highest_w == 168.0);
}

TEST_CASE("a local hour that the clocks skip draws nothing, one that they show twice draws twice") {
  // March has Monday to Wednesday 5 times: 576 * 87 + 300 * 31 = 59412 Wh, less the 146 Wh of the
  // hour that begins on Sunday at 01:00, skipped on 28 March.
  CHECK(kwh_of_month("Europe/Dublin", 2) == about(59.266));
  // October has Friday to Sunday 5 times: 576 * 99 + 300 * 31 = 66324 Wh, and that hour once more
  // on the 31st.
  CHECK(kwh_of_month("Europe/Dublin", 9) == about(66.470));
  // April has Thursday and Friday 5 times: 576 * 91 + 300 * 30 = 61416 Wh, and the half hour from
  // 01:30 to 02:00 once more on the 4th.
  CHECK(kwh_of_month("Australia/Lord_Howe", 3) == about(61.489));
  // Without a change of the clocks.
  CHECK(kwh_of_month("Etc/UTC", 2) == about(59.412));
}

TEST_CASE("a week knows the calendar's weekdays, whatever a holiday counts as") {
  const std::string holidays = "holidays = [2027-12-25, 2027-12-27]\nholidays_as = \"sun\"\n";
  const auto plain = tests::reckon(study_with(watts(tests::rising_week())));
  const auto counted =
      tests::reckon(study_with(watts(tests::rising_week()), tests::kYear2027 + holidays));
  CHECK(only(counted).ledger.kwh == only(plain).ledger.kwh);
}

TEST_CASE("at rest a device with a week draws its rest watts, over midnight too") {
  const auto reckoned = tests::reckon(study_with(
      "count = 2\n" + watts("off = 0.5, " + tests::rising_week()) +
      "[[candidate.device.rest]]\nstate = \"off\"\ndays = \"fri\"\nhours = \"22:00-06:00\"\n"));
  const energy::Ledger& ledger = only(reckoned).ledger;
  // 53 evenings of 119 + 120 Wh and 52 mornings of 121 + ... + 126 = 741 Wh fall away: the night
  // of the last Friday ends with the year. 106 + 312 = 418 h at 0.5 W take their place.
  const double one_kwh = (740796 - 53 * 239 - 52 * 741 + 418 * 0.5) / 1000;
  CHECK(ledger.total_kwh() == about(2 * one_kwh));
  CHECK(ledger.states[kOff].device_hours == about(2 * 418));
  CHECK(ledger.states[kOff].energy_kwh == about(2 * 0.209));
  CHECK(ledger.states[kIdle].device_hours == about(2 * (8760 - 418)));
}

TEST_CASE("an hour that a device rests through is not among its highest") {
  const std::string rest =
      "[[candidate.device.rest]]\nstate = \"off\"\ndays = \"sun\"\nhours = \"23:00-24:00\"\n";
  const auto reckoned = tests::reckon(study_with(watts(tests::rising_week()) + rest));
  CHECK(only(reckoned).ledger.highest_w == 167.0);
}

TEST_CASE("the highest draw of two weeks together is that of one instant") {
  const auto peak = [](int at) {
    return watts(tests::week_text([at](int hour) { return hour == at ? 100 : 10; }));
  };
  const auto highest_w = [&peak](int first, int second) {
    const auto reckoned =
        tests::reckon(study_with(peak(first) + "[[candidate.device]]\n" + peak(second)));
    return only(reckoned).ledger.highest_w;
  };
  CHECK(highest_w(30, 31) == 110.0);
  CHECK(highest_w(30, 30) == 200.0);
}

TEST_CASE("each band is charged what the week draws in it") {
  const auto reckoned = tests::reckon(tests::kYear2027 + R"(
[tariff]
currency = "EUR"
[[tariff.band]]
name = "night"
hours = "00:00-08:00"
price = 0.10
[[tariff.band]]
name = "day"
price = 0.30
[[candidate]]
id = "box"
[[candidate.device]]
)" + watts(tests::rising_week()));
  // A night has 192 d + 36 Wh: 52 weeks of 192 * 21 + 36 * 7 = 4284 Wh, and a Friday's 804 Wh.
  double night_kwh = 0;
  const energy::Ledger& ledger = only(reckoned).ledger;
  for (Eigen::Index row = 0; row < ledger.kwh.rows(); row += 2) night_kwh += ledger.kwh(row, 0);
  CHECK(night_kwh == about(223.572));
  CHECK(units::in_currency(only(reckoned).cost.cost) == about(0.10 * 223.572 + 0.30 * 517.224));
}

TEST_CASE("the scale of its meter is in all watts of a week") {
  const auto reckoned =
      tests::reckon(study_with("meter = \"hall\"\n" + watts("off = 2, " + tests::rising_week()) +
                               "[[meter]]\nid = \"hall\"\nscale = 1.1\n"));
  CHECK(only(reckoned).ledger.total_kwh() == about(1.1 * 740.796));
  CHECK(only(reckoned).ledger.highest_w == about(1.1 * 168));
}

TEST_CASE("a device with a week takes no workload from the first one without runs") {
  const auto reckoned = tests::reckon(study_with(watts(tests::rising_week()) + R"(
[[candidate.device]]
watts = { idle = 10 }
increments = { films = 5 }
[[workload]]
id = "films"
[[workload.use]]
days = "sat,sun"
hours = "20:00-22:00"
share = 0.5
units = 2
)"));
  const energy::Ledger& ledger = only(reckoned).ledger;
  CHECK(ledger.kwh.col(0).sum() == about(740.796 + 87.6));
  CHECK(ledger.kwh.col(1).sum() == about(1.04));
  CHECK(ledger.devices[0].energy_kwh == about(740.796));
  // In use on Sunday from 21:00 to 22:00, when the week draws 166 W; the most is at 23:00.
  CHECK(ledger.highest_w == about(166 + 20));
}

TEST_CASE("energy alone is the ledger's for a week as well, and equal hours are one situation") {
  const read::StudyInput input = tests::read_study(
      study_with(watts(tests::week_text([](int hour) { return hour % 24 < 8 ? 4.5 : 12.25; }))));
  const auto folded = calendar::fold_study(input.study, input.zone);
  const auto plan = energy::plan_candidate(input.study, 0, folded);
  CHECK(plan.devices.front().situations.size() == 2);
  const power::CandidateLaw law = power::central_law(input.study, 0);
  energy::Ledger ledger;
  Eigen::VectorXd kwh;
  REQUIRE(!energy::Reckoner(plan).reckon(law, ledger));
  REQUIRE(!energy::Reckoner(plan).reckon_energy(law, kwh));
  CHECK(kwh == ledger.kwh.col(0));
  CHECK(ledger.total_kwh() == about(365 * (8 * 4.5 + 16 * 12.25) / 1000));
}

TEST_CASE("only hours that a week tells apart are situations of a study") {
  const auto hours = [](const std::string& keys) {
    const read::StudyInput input = tests::read_study(study_with(watts(keys)));
    const auto folded = calendar::fold_study(input.study, input.zone);
    std::vector<std::uint32_t> sorted = folded.hour_of_week;
    std::sort(sorted.begin(), sorted.end());
    return std::make_pair(folded.fold.situations(), sorted);
  };
  using Hours = std::vector<std::uint32_t>;
  Hours all(168);
  std::iota(all.begin(), all.end(), 0U);
  CHECK(hours("idle = 10") == std::make_pair(std::size_t{1}, Hours{}));
  CHECK(hours(tests::steady_week(10)) == std::make_pair(std::size_t{1}, Hours{0}));
  CHECK(hours(tests::week_text([](int hour) { return hour < 120 ? 9 : 20; })) ==
        std::make_pair(std::size_t{2}, Hours{0, 120}));
  CHECK(hours(tests::rising_week()) == std::make_pair(std::size_t{168}, all));
}
