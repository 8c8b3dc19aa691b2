#include <doctest/doctest.h>

#include <nlohmann/json.hpp>
#include <regex>

#include "fixture.hpp"
#include "wattweek/report/shift_and_rest.hpp"

namespace wattweek::report {
namespace {

/// Three starts; the second is the cheapest with the rack, with the palm box only for what goes
/// unserved.
struct Made {
  model::Study study = report::study();
  decide::Shift shift;

  Made() {
    const auto start = [](int later, int minute, double rack, double palm, double unserved) {
      return decide::Start{
          later,
          {std::nullopt, minute},
          {{1000, rack, {120, 0}, 10, 3}, {100, palm, {120 - unserved, unserved}, 1, 0.3}}};
    };
    shift.starts = {start(0, 22 * 60, 300, 30, 0), start(1, 23 * 60, 298.5, 28, 40),
                    start(2, 0, 300, 30, 0)};
    shift.choices = {{decide::StartChoice{1, 0, 1.5, {}}, {}},
                     {decide::StartChoice{0, 0, 0, {}}, decide::StartChoice{1, 0, 2, {}}}};
  }
  std::string text() const { return shift_text({study, shift}, {}); }
  /// Wherever lines are broken.
  bool says(const std::string& part) const {
    const std::string all = std::regex_replace(text(), std::regex("\\s+"), " ");
    return all.find(part) != std::string::npos;
  }
};

TEST_CASE("shift: sentences, and what each start costs") {
  CHECK(Made().text() == R"(Hall cupboard: what if it is moved
What if Film streaming started at another hour? A start is that of its first
hours; all of them move together. Today it starts at 22:00.
- With Rack server, Film streaming costs least when it starts at 23:00: 1.50 EUR
  a year less than at 22:00.
- With Palm-size box, Film streaming costs least as today, at 22:00. At 23:00 it
  would cost 2.00 EUR a year less than today, but only because 40 stream-hours a
  year go unserved there.

Each start

                 rack   palm      palm
start             EUR    EUR  unserved
22:00 (today)  300.00  30.00         0
23:00          298.50  28.00        40
00:00          300.00  30.00         0

All figures are of 12 months.
)");
}

TEST_CASE("shift: a single candidate is not named") {
  Made made;
  made.study.candidates.resize(1);
  made.shift.choices.resize(1);
  for (decide::Start& start : made.shift.starts) start.candidates.resize(1);
  CHECK(made.says("- Film streaming costs least when it starts at 23:00:"));
}

TEST_CASE("shift: over a horizon the saving is said at present value too") {
  Made made;
  made.study.finance.emplace().years = 5;
  made.shift.choices[0].cheapest->saves_present_cost = 7.25;
  CHECK(
      made.says("1.50 EUR a year less than at 22:00. Over 5 years that is 7.25 EUR at present "
                "value."));
}

TEST_CASE("shift: less than a cent is not called a saving, a skipped workload not cheap") {
  Made made;
  made.shift.choices[0].cheapest->saves_cost = 0.004;
  made.shift.choices[1] = {};
  CHECK(made.says("no start of Film streaming costs noticeably less than today's, 22:00."));
  CHECK(made.says("- Palm-size box does not offer Film streaming."));
}

TEST_CASE("shift: what goes unserved at the cheapest start and today is said") {
  Made made;
  made.shift.starts[0].candidates[0].unit_hours = {100, 20};
  made.shift.starts[1].candidates[0].unit_hours = {115, 5};
  CHECK(made.says("There 5 stream-hours a year go unserved, at 22:00 20 stream-hours a year."));
}

TEST_CASE("shift: that the calendar holds less work at some starts is said") {
  Made made;
  CHECK_FALSE(made.says("savings are for the work of today"));
  made.shift.starts[2].candidates[0].unit_hours = {118, 0};
  CHECK(made.says("savings are for the work of today."));
}

TEST_CASE("shift: the starts of a week are a table of days and hours, unserved ones marked") {
  Made made;
  made.shift.starts.clear();
  for (int later = 0; later < 168; ++later) {
    const int minute = 22 * 60 + 30 + later * 60;
    made.shift.starts.push_back(
        {later,
         {static_cast<unsigned>(5 + minute / 1440) % 7, minute % 1440},
         {{1000, 100.0 + later, {120, 0}, 0, 0},
          {100, 30, {later == 3 ? 0.0 : 120.0, later == 3 ? 120.0 : 0.0}, 0, 0}}});
  }
  CHECK(made.says("Today it starts at 22:30 on sat."));
  CHECK(made.says("Rack server, EUR"));
  CHECK(made.says("22:30 148.00 172.00 196.00 220.00 244.00 100.00 124.00"));
  CHECK(made.says("01:30 30.00 30.00 30.00 30.00 30.00 30.00 30.00*"));
  CHECK(made.says("* Some of it goes unserved; json says how much."));
}

TEST_CASE("shift: rows are the same in CSV and JSON, full digits") {
  Made made;
  made.shift.starts[1].time.weekday_bit = 6;
  CHECK(shift_csv({made.study, made.shift}).substr(0, 350) ==
        "hours_later,day,time,currency,energy_kwh rack,cost rack,unit_hours rack,"
        "unserved_unit_hours rack,energy_kwh palm,cost palm,unit_hours palm,"
        "unserved_unit_hours palm\r\n"
        "0,,22:00,\"EUR\",1000,300,120,0,100,30,120,0\r\n"
        "1,sun,23:00,\"EUR\",1000,298.5,120,0,100,28,80,40\r\n"
        "2,,00:00,\"EUR\",1000,300,120,0,100,30,120,0\r\n");
  const auto json = nlohmann::json::parse(shift_json({made.study, made.shift}));
  CHECK(json["format"] == "wattweek-shift-1");
  CHECK(json["workload"] == "film");
  CHECK(json["starts"][1]["day"] == "sun");
  CHECK(json["starts"][1]["candidates"][1]["unserved_unit_hours"] == 40);
  CHECK(json["candidates"][0]["cheapest"]["time"] == "23:00");
  CHECK(json["candidates"][0]["cheapest"]["saves_cost"] == 1.5);
  CHECK(json["candidates"][0]["cheaper_unserved"].is_null());
  CHECK(json["candidates"][1]["cheaper_unserved"]["unserved_unit_hours"] == 40);
}

}  // namespace
}  // namespace wattweek::report
