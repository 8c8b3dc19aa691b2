// From a profile to a log, and back: what `wattweek` says a machine draws, logged, fitted, written
// as a profile, and estimated again.

#include <doctest/doctest.h>
#include <fmt/format.h>

#include <cmath>
#include <string>
#include <vector>

#include "../logs/logged.hpp"
#include "../metering/chance.hpp"
#include "../support/study_text.hpp"
#include "../support/week_text.hpp"
#include "fitted_text.hpp"
#include "wattweek/decide/uncertainty.hpp"
#include "wattweek/power/device_law.hpp"
#include "wattweek/report/fit.hpp"

namespace wattweek::tests {
namespace {

using metering::Chance;
using metering::FadingNoise;

// A study of whole months, whose machine is the profile of this text.
read::StudyInput study_of(const std::string& study, const std::string& profile) {
  const read::Surroundings files{
      [&](const std::string& path, const std::string&, read::ShippedKind) {
        return read::SourceText{path, path, profile};
      },
      [](const std::string& name, std::chrono::year_month first, int months) {
        return calendar::zone_rules(name, first, months);
      }};
  auto got = read::study({"study.toml", "study.toml", study}, files);
  for (const auto& problem : got.problems) FAIL_CHECK(diag::to_text(problem));
  REQUIRE(got.value.has_value());
  return std::move(*got.value);
}

double energy_kwh(const read::StudyInput& input) {
  const auto assessed = decide::assess(input.study, input.zone);
  REQUIRE(std::holds_alternative<decide::Assessment>(assessed));
  return std::get<decide::Assessment>(assessed).candidates.front().ledger.total_kwh();
}

std::string profile_of(const FittedText& fitted, const calendar::ZoneRules& zone,
                       report::ProfileKind kind) {
  const report::FitShown shown{"log.csv",     "a zone",           zone,
                               fitted.report, fitted.measurement, fitted.fit};
  return report::fitted_profile(shown, kind, "fitted");
}

// --- Idle and increments ---

constexpr double kDay_s = 86400;
constexpr int kDays = 28;  // February 2027 begins on a Monday.

const std::string kMachine = R"(name = "Box"
[watts]
idle = 14.2
[increments]
films = 5.6
backup = 9.3
)";

// Two streams in the evening, each in use for part of the time; a backup every night.
std::string evening_study(double share) {
  return fmt::format(R"(
time_zone = "Etc/UTC"
start = 2027-02-01
months = 1
{}
[[workload]]
id = "films"
unit = "stream"
[[workload.use]]
hours = "19:00-23:00"
units = 2
pattern = "independent"
share = {}
[[workload]]
id = "backup"
unit = "run"
[[workload.use]]
hours = "02:00-03:20"
[[candidate]]
id = "box"
[[candidate.device]]
profile = "box.toml"
runs = ["films", "backup"]
)",
                     kFlatTariff, share);
}

std::string stamp(double at_s) {
  const auto s = static_cast<int>(at_s);
  return fmt::format("2027-02-{:02}T{:02}:{:02}:{:02}Z", 1 + s / 86400, s / 3600 % 24, s / 60 % 60,
                     s % 60);
}

// A month as the study describes it: each stream on or off for ten minutes at a time.
class Month {
 public:
  Month(double share, std::uint64_t seed) : chance_(seed), noise_(0.4, 300, kStep_s) {
    const read::StudyInput study = study_of(evening_study(share), kMachine);
    law_ = power::central_law(study.study, 0).devices.front();
    activity_ = "workload,start,end\n";
    films_.assign(static_cast<std::size_t>(kDays * kDay_s / kTurn_s), 0);
    for (int day = 0; day < kDays; ++day) live(day, share);
    log_ = "time,W\n";
    for (double at_s = 0; at_s <= kDays * kDay_s; at_s += kStep_s) {
      log_ +=
          fmt::format("{},{:.1f}\n", at_s < kDays * kDay_s ? stamp(at_s) : "2027-03-01T00:00:00Z",
                      watts(at_s) + noise_.next(chance_));
    }
  }

  const std::string& log() const { return log_; }
  const std::string& activity() const { return activity_; }
  // The part of the evenings in which a stream was in use indeed.
  double share_seen() const { return turns_ / (kDays * 2 * 4 * 3600 / kTurn_s); }

 private:
  static constexpr double kStep_s = 120;
  static constexpr double kTurn_s = 600;

  void note(const char* workload, double from_s, double to_s) {
    activity_ += fmt::format("{},{},{}\n", workload, stamp(from_s), stamp(to_s));
  }

  void live(int day, double share) {
    const double midnight_s = day * kDay_s;
    note("backup", midnight_s + 7200, midnight_s + 12000);
    for (double at_s = midnight_s + 19 * 3600; at_s < midnight_s + 23 * 3600; at_s += kTurn_s) {
      for (int stream = 0; stream < 2; ++stream) {
        if (chance_.even() >= share) continue;
        note("films", at_s, at_s + kTurn_s);
        films_[static_cast<std::size_t>(at_s / kTurn_s)] += 1;
        turns_ += 1;
      }
    }
  }

  // What the program says that it draws with so many units in use. Tasks are in the study's order.
  double watts(double at_s) const {
    const auto turn = static_cast<std::size_t>(at_s / kTurn_s);
    const double of_day_s = std::fmod(at_s, kDay_s);
    const bool backup = of_day_s >= 7200 && of_day_s < 12000;
    return law_.idle_w +
           power::increment_w(law_.tasks[0], turn < films_.size() ? films_[turn] : 0) +
           power::increment_w(law_.tasks[1], backup ? 1 : 0);
  }

  Chance chance_;
  FadingNoise noise_;
  power::DeviceLaw law_;
  std::string activity_;
  std::string log_;
  std::vector<double> films_;  // Streams in use, by turn.
  double turns_ = 0;
};

TEST_CASE("a profile logged, fitted and estimated again says the same energy within its ranges") {
  constexpr int kMonths = 20;
  constexpr double kShare = 0.4;
  const double truth_kwh = energy_kwh(study_of(evening_study(kShare), kMachine));
  int inside = 0;
  for (int run = 0; run < kMonths; ++run) {
    const Month month(kShare, 700'000 + static_cast<std::uint64_t>(run));
    const FittedText fitted = fitted_text(month.log(), month.activity());
    REQUIRE(fitted.problems == "");
    const std::string profile = profile_of(fitted, {}, report::ProfileKind::increments);
    // With the share that was seen, the estimate is the log's own energy: what a fit leaves has
    // the sum 0. Watts are written to a millionth, so that a kWh is known to a millionth.
    const auto as_seen = study_of(evening_study(month.share_seen()), profile);
    CHECK(energy_kwh(as_seen) == doctest::Approx(fitted.fit.energy_kwh).epsilon(1e-6));
    // With the share that was meant, the truth lies in what the profile's ranges leave open.
    const auto as_meant = study_of(evening_study(kShare), profile);
    const auto drawn = decide::draw(as_meant.study, as_meant.zone, {1000, 1, 1});
    REQUIRE(std::holds_alternative<decide::Uncertainty>(drawn));
    const auto& energy = std::get<decide::Uncertainty>(drawn).candidates.front().energy_kwh;
    if (energy.p2_5 <= truth_kwh && truth_kwh <= energy.p97_5) ++inside;
  }
  // Of 20 at 95 %, 17 or more in 98 % of all cases.
  CHECK(inside >= 17);
}

// --- A week over a change of the clocks ---

// `week` as a machine in Dublin logs it, every half-hour from the first to the last instant of a
// month of 2027, by the wall clock without zone.
std::string wall_clock_log(const calendar::ZoneRules& zone, int month) {
  using namespace std::chrono;
  const auto first = calendar::first_instant(zone, local_days(year(2027) / month / 1));
  const auto end = calendar::first_instant(zone, local_days(year(2027) / (month + 1) / 1));
  std::string log = "local time,W\n";
  for (calendar::Instant at = first; at <= end; at += minutes(30)) {
    const calendar::LocalTime local = calendar::local_time(zone, at);
    const auto day = floor<days>(local);
    const auto hours_of_day = duration_cast<hours>(local - day).count();
    const auto watts = (weekday(day).iso_encoding() - 1) * 24 + hours_of_day + 1;
    log += fmt::format("{},{}\n", calendar::to_text(local), watts);
  }
  return log;
}

std::string month_study(int month) {
  return fmt::format(R"(
time_zone = "Europe/Dublin"
start = 2027-{:02}-01
months = 1
{}
[[candidate]]
id = "box"
[[candidate.device]]
profile = "box.toml"
)",
                     month, kFlatTariff);
}

// What a month of such a week takes, by hand: see tests/energy/week_of_watts_test.cpp.
void check_week_comes_back(int month, double expected_kwh) {
  CAPTURE(month);
  const calendar::ZoneRules zone = logs::zone_of("Europe/Dublin");
  logs::LogOptions options;
  options.zone = zone;
  const FittedText fitted = fitted_text(wall_clock_log(zone, month), "", options);
  REQUIRE(fitted.problems == "");
  CHECK(fitted.fit.energy_kwh == doctest::Approx(expected_kwh).epsilon(1e-12));
  for (std::size_t hour = 0; hour < 168; ++hour) {
    CAPTURE(hour);
    REQUIRE(fitted.fit.week[hour]);
    CHECK(*fitted.fit.week[hour] == doctest::Approx(static_cast<double>(hour + 1)).epsilon(1e-12));
  }
  const std::string profile = profile_of(fitted, zone, report::ProfileKind::week);
  CHECK(energy_kwh(study_of(month_study(month), profile)) ==
        doctest::Approx(expected_kwh).epsilon(1e-9));
}

TEST_CASE("a week logged over a change of the clocks comes back, and so does the log's energy") {
  check_week_comes_back(3, 59.266);
  check_week_comes_back(10, 66.470);
  // Without a change: May has Saturday to Monday 5 times, 576 * 95 + 300 * 31 Wh.
  check_week_comes_back(5, 64.020);
}

}  // namespace
}  // namespace wattweek::tests
