#include "wattweek/report/fit.hpp"

#include <doctest/doctest.h>

#include <nlohmann/json.hpp>
#include <regex>

#include "wattweek/calendar/zone_database.hpp"

namespace wattweek::report {
namespace {

constexpr logs::Microseconds kHour_us = 3'600'000'000;
// Monday, 1 March 2027, 00:00 UTC: 57 years of 365 days, 14 leap days, 59 days.
constexpr logs::Microseconds kMonday_us = (57 * 365 + 14 + 59) * 24 * kHour_us;

calendar::ZoneRules rules_of(const std::string& zone) {
  auto rules = calendar::zone_rules(zone, std::chrono::year(2027) / std::chrono::January, 12);
  REQUIRE(std::holds_alternative<calendar::ZoneRules>(rules));
  return std::get<calendar::ZoneRules>(std::move(rules));
}

/// 100 hours, all known: 10 W, and at times 30 W.
struct Made {
  std::string zone_name = "Etc/UTC";
  calendar::ZoneRules zone = rules_of("Etc/UTC");
  logs::LogReport log;
  metering::Measurement measurement;
  metering::Fit fit;
  std::optional<metering::MeterError> meter;
  std::optional<FitShown::UnderContract> contract;

  Made() {
    log.rows = log.used = 6001;
    metering::Coverage& coverage = measurement.coverage;
    coverage.readings = 6001;
    coverage.first_us = kMonday_us;
    coverage.last_us = kMonday_us + 100 * kHour_us;
    coverage.covered_hours = 100;
    coverage.typical_step_s = coverage.longest_step_s = 60;
    coverage.longest_step_at_us = kMonday_us;
    coverage.gap_s = 300;
    metering::Measured& measured = measurement.measured;
    measured.lowest_w = 10;
    measured.highest_w = 30;
    measured.resolution_w = 0.1;
    spend(75, 10);
    spend(25, 30);
    fit.energy_kwh = 1.5;
    fit.mean_w = 15;
    fit.levels = {{metering::State::idle, 10, 75, 0, 20},
                  {metering::State::active, 30, 25, 20, 50}};
    fit.idle_w = metering::Estimate{10, 0.05};
    fit.week.fill(15.0);
    fit.week[30] = 20.0;
    fit.year = {131.4, 120.0, 142.8, 3};
  }
  void spend(double hours, double watts) {
    metering::Measured& measured = measurement.measured;
    measured.kept.seconds += hours * 3600;
    measured.kept.joules += hours * 3600 * watts;
    const std::size_t bin = metering::bin_of(watts);
    if (measured.histogram.size() <= bin) measured.histogram.resize(bin + 1);
    measured.histogram[bin] = {hours * 3600, hours * 3600 * watts};
  }
  FitShown shown() const {
    return {"plug.csv", zone_name, zone, log, measurement, fit, meter, contract};
  }
  std::string text() const { return fit_text(shown(), {}); }
  nlohmann::json json() const { return nlohmann::json::parse(fit_json(shown())); }
  /// Wherever lines are broken.
  bool says(const std::string& part) const {
    const std::string all = std::regex_replace(text(), std::regex("\\s+"), " ");
    return all.find(part) != std::string::npos;
  }
};

TEST_CASE("fit: the answer comes first, then how much is known") {
  const std::string text = Made().text();
  CHECK(text.find("15.0 W on average over 4.2 days: 1.50 kWh.\n\nHow much is known\n") == 0);
}

TEST_CASE("fit: where more than 5 % of the time is not known the text opens with that") {
  Made made;
  made.measurement.coverage.covered_hours = 95;
  CHECK_FALSE(made.says("may be biased"));
  made.measurement.coverage.covered_hours = 90;
  const std::string text = made.text();
  const std::size_t warning = text.find("10 % of the time between the first and the last row");
  REQUIRE(warning != std::string::npos);
  CHECK(warning < text.find("How much is known"));
  CHECK(made.says("is not known, so that the mean may be biased."));
}

TEST_CASE("fit: what is not quite all of the time is never called all") {
  Made made;
  made.measurement.coverage.covered_hours = 99.99;
  CHECK(made.says("of which 100.0 h are known, 99.9 %."));
}

TEST_CASE("fit: a short log is told in minutes and Wh") {
  Made made;
  made.measurement.coverage.last_us = kMonday_us + kHour_us / 4;
  made.measurement.coverage.covered_hours = 0.25;
  made.fit.energy_kwh = 0.00375;
  CHECK(made.text().find("15.0 W on average over 15 min: 3.75 Wh.\n") == 0);
  CHECK(made.says("(Etc/UTC): 15 min, of which 15 min are known, 100 %."));
}

TEST_CASE("fit: a log without any time says so, and has neither levels nor a week") {
  Made made;
  made.measurement = {};
  made.measurement.coverage.first_us = made.measurement.coverage.last_us = kMonday_us;
  made.fit = {};
  const std::string text = made.text();
  CHECK(text.find("No time in this log can be told the watts of.") == 0);
  CHECK(text.find("What it draws") == std::string::npos);
  CHECK(text.find("The week") == std::string::npos);
  CHECK(text.find("A row every") == std::string::npos);
  CHECK(made.json()["week"][0].is_null());
}

TEST_CASE("fit: dropped rows are counted by reason, with a counter's restarts among them") {
  Made made;
  made.log.rows = 6010;
  made.log.dropped = {{"no-value", 7, 12}, {"negative", 2, 40}};
  made.measurement.coverage.restarts = 1;
  CHECK(made.says("6010 rows read, 6001 used; dropped: 7 no-value, 2 negative and 1 restart."));
  CHECK(made.json()["log"]["dropped"].dump() == R"({"negative":2,"no-value":7,"restart":1})");
}

TEST_CASE("fit: of a change-only log it is said that rows hold, and no gap") {
  Made made;
  made.measurement.coverage.change_only = true;
  made.measurement.coverage.gap_s = std::numeric_limits<double>::infinity();
  made.measurement.coverage.longest_step_s = 22 * 3600;
  CHECK(
      made.says("the longest time without one 22 h from 2027-03-01 00:00. Rows come only when the "
                "value moved, so that each holds until the next."));
  CHECK_FALSE(made.says("--gap"));
  CHECK(made.json()["log"]["change_only"] == true);
}

TEST_CASE("fit: a long time at exactly 0 W is a question to the reader") {
  Made made;
  made.measurement.coverage.longest_zero_s = 7200;
  made.measurement.coverage.longest_zero_at_us = kMonday_us + 5 * kHour_us;
  CHECK(
      made.says("The longest time at exactly 0 W is 2 h from 2027-03-01 05:00: switched off, or "
                "nothing received? The log does not say."));
}

TEST_CASE("fit: idle has its 95 %, and the meter's own error beside it") {
  Made made;
  // 1.96 x 0.05 = 0.098.
  CHECK(made.says("Idle: 10.000 W, give or take 0.098 W (95 %)."));
  made.meter = metering::MeterError{2, 0.5};
  // 2 % of 10 W and 0.5 W.
  CHECK(made.says("(95 %), and the meter's own error of up to 0.700 W."));
}

TEST_CASE("fit: where no idle can be told that is said, and JSON has nulls") {
  Made made;
  made.fit.idle_w.reset();
  CHECK(made.says("Idle watts cannot be told from this log."));
  CHECK(made.json()["idle_w"].dump() == R"({"standard_error":null,"value":null})");
}

TEST_CASE("fit: levels of which the meter's error may be half or more are named") {
  Made made;
  made.fit.levels.insert(made.fit.levels.begin(), {metering::State::off, 0.6, 3, 0, 1});
  made.meter = metering::MeterError{2, 0.5};
  CHECK(
      made.says("the meter cannot tell: half of the reading or more may be its error at off "
                "(0.600 W)."));
  made.meter = metering::MeterError{2, 0.2};
  CHECK_FALSE(made.says("cannot tell"));
}

TEST_CASE("fit: the meter's error stands beside levels and increments") {
  Made made;
  made.fit.increments = {{"films", metering::Estimate{5, 0.2}, 20, {}, false},
                         {"door", std::nullopt, 100, {}, true}};
  CHECK_FALSE(made.json()["levels"][0].contains("meter_w"));
  CHECK_FALSE(made.says("meter off"));
  made.meter = metering::MeterError{2, 0.5};
  // 2 % of 10 W and of 30 W, and 0.5 W; of what is added, which two readings of the same meter
  // differ by, 2 % of 5 W alone.
  CHECK(made.json()["levels"][0]["meter_w"].get<double>() == doctest::Approx(0.7));
  CHECK(made.json()["levels"][1]["meter_w"].get<double>() == doctest::Approx(1.1));
  CHECK(made.json()["increments"][0]["meter_w"].get<double>() == doctest::Approx(0.1));
  CHECK_FALSE(made.json()["increments"][1].contains("meter_w"));
  CHECK(made.says("meter off"));
}

TEST_CASE("fit: steps of the meter that are coarse beside idle are told, unless uses were noted") {
  Made made;
  made.measurement.measured.resolution_w = 1;
  CHECK_FALSE(made.says("coarse"));  // A tenth of 10 W.
  made.measurement.measured.resolution_w = 2;
  CHECK(made.says("Steps of 2 W are coarse beside that"));
  made.fit.residuals.emplace();
  CHECK_FALSE(made.says("coarse"));
}

TEST_CASE("fit: weeks that are all alike leave no range") {
  Made made;
  made.fit.year.low = made.fit.year.high = made.fit.year.energy_kwh;
  CHECK(made.says("it takes 131.4 kWh (all 3 full weeks are alike)."));
}

TEST_CASE("fit: the meter's error of the energy is that of its mean watts") {
  Made made;
  made.meter = metering::MeterError{2, 0.5};
  // (2 % of 15 W + 0.5 W) x 100 h.
  CHECK(made.json()["meter_error"]["energy_kwh"].get<double>() == doctest::Approx(0.08));
  CHECK(made.json()["meter_error"]["mean_w"].get<double>() == doctest::Approx(0.8));
  CHECK(made.says("Up to 2 % of the reading and 0.5 W off: 0.080 kWh of the 1.50 kWh."));
}

TEST_CASE("fit: workloads in step are named with each other, and have no watts") {
  Made made;
  made.fit.increments = {{"films", std::nullopt, 12, {"sound"}, false},
                         {"sound", std::nullopt, 12, {"films"}, false},
                         {"backup", metering::Estimate{6.5, 0.2}, 20, {}, false}};
  CHECK(
      made.says("films is always in use in step with sound: the log cannot tell whose watts they "
                "are."));
  const auto increments = made.json()["increments"];
  CHECK(increments[0]["each_w"].is_null());
  CHECK(increments[0]["in_step_with"].dump() == R"(["sound"])");
  CHECK(increments[0]["in_step_with_idle"] == false);
  CHECK(increments[2]["each_w"] == 6.5);
  CHECK_FALSE(increments[2].contains("in_step_with"));
}

TEST_CASE("fit: a workload that is always in use, and one that never is, have no watts") {
  Made made;
  made.fit.increments = {{"door", std::nullopt, 100, {}, true},
                         {"films", std::nullopt, 0, {}, false}};
  CHECK(made.says("door is in use all the time: the log cannot tell its watts from idle."));
  CHECK(made.json()["increments"][0]["in_step_with_idle"] == true);
  CHECK(made.says("films is never in use in this log."));
}

TEST_CASE("fit: an hour of the week that was never seen is a question mark, and leaves no year") {
  Made made;
  made.fit.week[100].reset();
  made.fit.year = {};
  CHECK(made.says("? not in the log"));
  CHECK(made.says("No year can be told: some hour of the week was never seen."));
  CHECK(made.json()["week"][100].is_null());
  CHECK(made.json()["year"].dump() == R"({"energy_kwh":null,"high":null,"low":null})");
}

TEST_CASE("fit: a year says on how many weeks it rests, and where that is too few") {
  Made made;
  CHECK(
      made.says("If the year is like these weeks, it takes 131.4 kWh (120.0 to 142.8, 95 %, from "
                "3 full weeks)."));
  made.fit.year.low.reset();
  made.fit.year.high.reset();
  CHECK(
      made.says("it takes 131.4 kWh; how far that can be trusted is not known from less than two "
                "weeks."));
}

TEST_CASE("fit: times in JSON have the offset of the zone, and a fraction where there is one") {
  Made made;
  CHECK(made.json()["log"]["first"] == "2027-03-01T00:00:00+00:00");
  made.zone_name = "America/St_Johns";
  made.zone = rules_of(made.zone_name);
  made.measurement.coverage.first_us += 12 * kHour_us + 250'000;
  // Newfoundland is three and a half hours behind UTC in winter.
  CHECK(made.json()["log"]["first"] == "2027-03-01T08:30:00.25-03:30");
}

TEST_CASE("fit: the profile of a week has a line for each day") {
  Made made;
  made.measurement.measured.kept = {};
  made.fit.levels.insert(made.fit.levels.begin(), {metering::State::off, 0.6, 3, 0, 1});
  const std::string text = fitted_profile(made.shown(), ProfileKind::week, "my \"box\"");
  CHECK(text.find("# Fitted by wattweek to plug.csv:\n# 100.0 h known from 2027-03-01 00:00 to "
                  "2027-03-05 04:00 (Etc/UTC).\nname = \"my \\\"box\\\"\"\n\n[watts]\noff = 0.6\n"
                  "week = [ # W, from Monday 00:00, a line for each day\n  15, 15, ") == 0);
  CHECK(text.find("  15, 15, 15, 15, 15, 15, 20, 15,") != std::string::npos);
}

TEST_CASE("fit: idle and increments of a profile are ranges of sqrt(3) standard errors") {
  Made made;
  made.fit.idle_w = metering::Estimate{10, 1};
  made.fit.increments = {{"films", metering::Estimate{0.5, 0.5}, 20, {}, false},
                         {"door", std::nullopt, 100, {}, true}};
  made.meter = metering::MeterError{2, 0.5};
  const std::string text = fitted_profile(made.shown(), ProfileKind::increments, "box");
  // sqrt(3) = 1.7320508.
  CHECK(text.find("\nmeter = \"plug\"\n\n[watts]\nidle = [8.267949, 11.732051]") !=
        std::string::npos);
  CHECK(text.find(
            "\n[increments] # W for each unit in use\n\"films\" = [0, 1.366025]\n# \"door\": the "
            "log cannot tell its watts\n") != std::string::npos);
}

TEST_CASE("fit: the meter of a profile is off by its error at the mean watts") {
  Made made;
  made.meter = metering::MeterError{2, 0.5};
  // (0.3 + 0.5) of 15 W is 5.33 %.
  CHECK(meter_entry(made.shown()) == "[[meter]]\nid = \"plug\"\nscale = [0.9467, 1.0533]\n");
}

}  // namespace
}  // namespace wattweek::report
