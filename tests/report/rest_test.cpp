#include <doctest/doctest.h>

#include <memory>
#include <nlohmann/json.hpp>
#include <regex>

#include "fixture.hpp"
#include "wattweek/report/cautions.hpp"
#include "wattweek/report/shift_and_rest.hpp"

namespace wattweek::report {
namespace {

/// The palm-size box off from 1 to 6.
struct Made {
  model::Study study = report::study();
  decide::RestPlan plan{1, {0}, {60, 360}, model::RestState::off};
  decide::RestResult result;
  bool is_state_given = false;

  Made() {
    auto profile = std::make_shared<model::Profile>();
    profile->off = units::watts(1.5);
    study.candidates[1].devices[0].profile = profile;
    result.without = {100, 30, 0, {{760, 12}}};
    result.with = {80, 25, 1825, {{700, 72}}};
    result.saves_kwh = 20;
    result.saves_cost = 5;
  }
  RestShown shown() const { return {study, plan, result, is_state_given}; }
  std::string text() const { return rest_text(shown(), {}); }
  /// Wherever lines are broken.
  bool says(const std::string& part) const {
    const std::string all = std::regex_replace(text(), std::regex("\\s+"), " ");
    return all.find(part) != std::string::npos;
  }
};

TEST_CASE("rest: what is saved, what goes unserved, and what goes with it") {
  CHECK(Made().text() == R"(Hall cupboard: what if it rests
What if, with Palm-size box, device of palm is off (1.5 W) every day from 01:00
to 06:00?
Off, since device of palm has no sleep watts.

in 12 months     kWh    EUR
as it is       100.0  30.00
with the rest   80.0  25.00

- That is 20.0 kWh a year less, and 5.00 EUR a year less.
- 72 of 772 stream-hours a year of Film streaming go unserved, today 12.
- What goes unserved is a part of what is saved: it is not like for like.
Before power is cut, shut down. A gateway, router or camera host at rest takes
telephone and emergency calls, alarms and remote monitoring with it
(docs/safety.md).
)");
}

TEST_CASE("rest: where all is served as today that is said") {
  Made made;
  made.result.with.unit_hours = {{760, 12}};
  CHECK(made.says("- All that is served today is served with the rest too."));
  CHECK_FALSE(made.says("not like for like"));
}

TEST_CASE("rest: where it rests at that time already nothing is called a saving") {
  Made made;
  made.result.with = made.result.without;
  CHECK(made.says("- At that time all of it rests already: nothing changes."));
}

TEST_CASE("rest: over a horizon the saving is said at present value too") {
  Made made;
  made.study.finance.emplace().years = 5;
  made.result.saves_present_cost = 24;
  CHECK(made.says("Over 5 years it comes to 24.00 EUR at present value."));
}

TEST_CASE("rest: the state that nobody named is explained, copies are counted") {
  Made made;
  auto profile = std::make_shared<model::Profile>();
  profile->sleep = units::watts(2);
  made.study.candidates[1].devices[0].profile = profile;
  made.study.candidates[1].devices[0].count = 2;
  made.plan.state = model::RestState::sleep;
  CHECK(made.says("Asleep, since all of these can sleep; with :off they would be off."));
  CHECK(made.says("2 x device of palm is asleep (2 W)"));
  made.is_state_given = true;
  CHECK_FALSE(made.says("can sleep"));
}

TEST_CASE("rest: neither text nor JSON comes without the caution") {
  Made made;
  made.result = {};
  made.result.with.unit_hours = made.result.without.unit_hours = {{}};
  CHECK(made.says("Before power is cut, shut down. A gateway,"));
  CHECK(nlohmann::json::parse(rest_json(made.shown()))["caution"] == switching_caution());
}

TEST_CASE("rest: JSON holds the devices and both reckonings, full digits") {
  const auto json = nlohmann::json::parse(rest_json(Made().shown()));
  CHECK(json["format"] == "wattweek-rest-1");
  CHECK(json["candidate"] == "palm");
  CHECK(json["devices"][0]["number"] == 1);
  CHECK(json["hours"] == "01:00-06:00");
  CHECK(json["state"] == "off");
  CHECK(json["without"]["energy_kwh"] == 100);
  CHECK(json["with"]["cost"] == 25);
  CHECK(json["saves_kwh"] == 20);
  CHECK(json["saves_present_cost"].is_null());
  CHECK(json["workloads"][0]["unserved_unit_hours"] == 72);
  CHECK(json["workloads"][0]["unserved_without"] == 12);
}

}  // namespace
}  // namespace wattweek::report
