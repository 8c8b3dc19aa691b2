#include "wattweek/decide/shift.hpp"

#include <doctest/doctest.h>

#include "../support/about.hpp"
#include "../support/study_text.hpp"

namespace wattweek::decide {
namespace {

using tests::about;
using tests::kFlatTariff;
using tests::kYear2027;
using tests::Reckoned;

const std::string kNightTariff = R"(
[tariff]
currency = "EUR"
band = [ { name = "night", price = 0.2, hours = "23:00-07:00" }, { name = "day", price = 0.3 } ]
)";

const std::string kBox = R"(
[[candidate]]
id = "box"
[[candidate.device]]
watts = { idle = 10, sleep = 2 }
increments = { backup = 100 }
)";

std::string backup(const std::string& uses) {
  return "\n[[workload]]\nid = \"backup\"\nuse = [" + uses + "]\n";
}

/// A study's first workload at every start.
struct Shifted {
  Reckoned got;
  Shift shift;

  explicit Shifted(const std::string& text) : got(tests::reckon(text)) {
    auto reckoned = decide::shift(got.study, got.zone, got.result, 0);
    REQUIRE(std::holds_alternative<Shift>(reckoned));
    shift = std::get<Shift>(std::move(reckoned));
  }
  const StartChoice& cheapest(std::size_t candidate = 0) const {
    REQUIRE(shift.choices.at(candidate).cheapest.has_value());
    return *shift.choices[candidate].cheapest;
  }
  const Start& start_of(const StartChoice& choice) const { return shift.starts.at(choice.start); }
};

/// The cost and use of the start so many hours later, against a file edited by hand.
void check_as_edited(const std::string& uses, std::size_t later, const std::string& edited) {
  const std::string before = kYear2027 + kNightTariff;
  const Shifted shifted(before + backup(uses) + kBox);
  const Reckoned by_hand = tests::reckon(before + backup(edited) + kBox);
  const StartFigures& is = shifted.shift.starts.at(later).candidates[0];
  const CandidateResult& should_be = by_hand.result.candidates[0];
  CHECK(is.cost == about(units::in_currency(should_be.cost.cost)));
  CHECK(is.energy_kwh == about(units::in_kilowatt_hours(should_be.energy)));
  CHECK(is.unit_hours.served == about(should_be.ledger.unit_hours[0].served));
}

TEST_CASE("shift: a start is what a file with the hours edited by hand gives") {
  check_as_edited(R"({ hours = "22:00-23:30" })", 0, R"({ hours = "22:00-23:30" })");
  check_as_edited(R"({ hours = "22:00-23:30" })", 3, R"({ hours = "01:00-02:30" })");
  check_as_edited(
      R"({ hours = "20:30-23:00", units = 2 }, { hours = "06:00-07:00", share = 0.5 })", 9,
      R"({ hours = "05:30-08:00", units = 2 }, { hours = "15:00-16:00", share = 0.5 })");
}

TEST_CASE("shift: days move with the midnights that the start passes") {
  check_as_edited(R"({ days = "fri", hours = "22:00-01:00" })", 1,
                  R"({ days = "fri", hours = "23:00-02:00" })");
  check_as_edited(R"({ days = "fri", hours = "22:00-01:00" })", 3,
                  R"({ days = "sat", hours = "01:00-04:00" })");
  check_as_edited(R"({ days = "sat-sun", hours = "09:00-10:00" })", 48,
                  R"({ days = "mon-tue", hours = "09:00-10:00" })");
}

TEST_CASE("shift: hours of one use that then belong to different days stay with their own") {
  check_as_edited(
      R"({ days = "sun", hours = "08:00-09:00,22:00-23:00" })", 4,
      R"({ days = "sun", hours = "12:00-13:00" }, { days = "mon", hours = "02:00-03:00" })");
}

TEST_CASE("shift: a whole day moved by hours ends on the next day") {
  check_as_edited(
      R"({ days = "sat" }, { days = "mon", hours = "20:00-21:00" })", 5,
      R"({ days = "sat", hours = "05:00-24:00" }, { days = "sun", hours = "00:00-05:00" },
                     { days = "tue", hours = "01:00-02:00" })");
}

TEST_CASE("shift: months stay as they are, and the new first day is judged by them") {
  check_as_edited(R"({ days = "fri", hours = "22:00-23:00", months = "jan" })", 3,
                  R"({ days = "sat", hours = "01:00-02:00", months = "jan" })");
}

TEST_CASE("shift: a daily workload has 24 starts, one with days 168, a repeating one fewer") {
  const auto starts = [](const std::string& uses) {
    return Shifted(kYear2027 + kFlatTariff + backup(uses) + kBox).shift.starts.size();
  };
  CHECK(starts(R"({ hours = "22:00-23:00" })") == 24);
  CHECK(starts(R"({ days = "mon-fri", hours = "22:00-23:00" })") == 168);
  CHECK(starts(R"({ hours = "00:30-01:30,08:30-09:30,16:30-17:30" })") == 8);
}

TEST_CASE("shift: a start is named by its first hours, on the first day of a run of days") {
  const Shifted daily(kYear2027 + kFlatTariff + backup(R"({ hours = "22:30-23:00" })") + kBox);
  CHECK(daily.shift.starts[2].time == StartTime{std::nullopt, 30});
  const Shifted weekend(
      kYear2027 + kFlatTariff +
      backup(R"({ hours = "07:00-08:00" }, { days = "sat-mon", hours = "22:00-23:00" })") + kBox);
  CHECK(weekend.shift.starts[0].time == StartTime{5, 22 * 60});
  CHECK(weekend.shift.starts[3].time == StartTime{6, 60});
  CHECK(weekend.shift.starts[30].time == StartTime{0, 4 * 60});
}

TEST_CASE("shift: an hour of 100 W moved into the night saves the difference of the prices") {
  const Shifted shifted(kYear2027 + kNightTariff + backup(R"({ hours = "20:00-21:00" })") + kBox);
  const StartChoice& cheapest = shifted.cheapest();
  CHECK(shifted.start_of(cheapest).time.minute == 23 * 60);  // The earliest of eight equal ones.
  CHECK(cheapest.saves_cost == about(0.1 * 365 * (0.3 - 0.2)));
  CHECK(cheapest.saves_kwh == about(0));
  CHECK_FALSE(cheapest.saves_present_cost.has_value());
}

TEST_CASE("shift: half a year's saving counts twice for a year, a horizon makes it present") {
  const Shifted half(kYear2027 + "months = 6\n" + kNightTariff +
                     backup(R"({ hours = "20:00-21:00" })") + kBox);
  CHECK(half.cheapest().saves_cost == about(2 * 0.1 * 181 * 0.1));
  const Shifted years(kYear2027 + "finance = { years = 5 }\n" + kNightTariff +
                      backup(R"({ hours = "20:00-21:00" })") + kBox);
  CHECK(years.cheapest().saves_present_cost.value() == about(5 * 3.65));
}

TEST_CASE("shift: where no start is cheaper than today's it is today's") {
  const Shifted shifted(kYear2027 + kNightTariff + backup(R"({ hours = "00:00-01:00" })") + kBox);
  CHECK(shifted.cheapest().start == 0);
  CHECK(shifted.cheapest().saves_cost == 0);
}

const std::string kNightRest = R"(rest = [ { hours = "23:00-07:00", state = "sleep" } ]
)";

TEST_CASE("shift: a start that is cheap because work goes unserved is never the cheapest") {
  const Shifted shifted(kYear2027 + kNightTariff + backup(R"({ hours = "20:00-21:00" })") + kBox +
                        kNightRest);
  CHECK(shifted.cheapest().start == 0);
  const auto& warned = shifted.shift.choices[0].cheaper_unserved;
  REQUIRE(warned.has_value());
  CHECK(shifted.start_of(*warned).time.minute == 23 * 60);
  CHECK(warned->saves_cost == about(36.5 * 0.3));
  CHECK(shifted.start_of(*warned).candidates[0].unit_hours.unserved == about(365));
}

TEST_CASE("shift: a start that serves what goes unserved today is compared for the same work") {
  // Today half of it falls into the rest. Served whole at night prices, it costs a third less.
  const Shifted shifted(kYear2027 + kNightTariff + backup(R"({ hours = "19:00-21:00" })") + kBox +
                        R"(rest = [ { hours = "20:00-22:00", state = "sleep" } ])");
  const StartChoice& cheapest = shifted.cheapest();
  CHECK(shifted.start_of(cheapest).time.minute == 23 * 60);
  CHECK(shifted.start_of(cheapest).candidates[0].unit_hours.unserved == about(0));
  CHECK(cheapest.saves_cost == about(36.5 * 0.1));
}

TEST_CASE("shift: a year of 53 Fridays does not make Saturdays cheaper") {
  const Shifted shifted(kYear2027 + kFlatTariff +
                        backup(R"({ days = "fri", hours = "20:00-21:00" })") + kBox);
  CHECK(shifted.shift.starts[0].candidates[0].unit_hours.served == about(53));
  CHECK(shifted.shift.starts[24].candidates[0].unit_hours.served == about(52));
  CHECK(shifted.cheapest().start == 0);
  CHECK_FALSE(shifted.shift.choices[0].cheaper_unserved.has_value());
}

TEST_CASE("shift: where the dates leave nothing of it, it is gone and not cheap") {
  // 2027-05-01 is a Saturday.
  const Shifted shifted(
      kYear2027 + kFlatTariff +
      backup(R"({ days = "sat", hours = "20:00-21:00", dates = "2027-05-01..2027-05-01" })") +
      kBox);
  CHECK(shifted.shift.starts[24].candidates[0].unit_hours.served == 0);
  CHECK(shifted.cheapest().start == 0);
  CHECK_FALSE(shifted.shift.choices[0].cheaper_unserved.has_value());
}

TEST_CASE("shift: a candidate that skips the workload has no cheapest start") {
  const Shifted shifted(kYear2027 + kNightTariff + backup(R"({ hours = "20:00-21:00" })") + kBox +
                        R"([[candidate]]
id = "bare"
skips = ["backup"]
device = [ { watts = { idle = 5 } } ]
)");
  CHECK(shifted.cheapest(0).start == 3);
  CHECK_FALSE(shifted.shift.choices[1].cheapest.has_value());
  CHECK(shifted.shift.starts[3].candidates[1].unit_hours.unserved == about(365));
}

Movable movable_with(const std::string& uses) {
  return movable(tests::reckon(kYear2027 + kFlatTariff + backup(uses) + kBox).study.workloads[0]);
}

TEST_CASE("shift: what is in use all day cannot be moved, nor hours that midnight would tear") {
  CHECK(movable_with("{}") == Movable::all_day);
  CHECK(movable_with(R"({ days = "sat" }, { share = 0.5 })") == Movable::all_day);
  CHECK(movable_with(R"({}, { hours = "20:00-21:00" })") == Movable::yes);
  CHECK(movable_with(R"({ hours = "20:00-22:00,21:00-23:00" })") == Movable::yes);
  CHECK(movable_with(R"({ days = "sat", hours = "20:00-22:00,21:00-23:00" })") ==
        Movable::overlaps);
}

}  // namespace
}  // namespace wattweek::decide
