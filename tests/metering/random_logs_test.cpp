// Logs of chance against the second reckoning.

#include <doctest/doctest.h>

#include <cmath>
#include <map>
#include <random>
#include <utility>

#include "slow_sums.hpp"

namespace wattweek::tests {
namespace {

using doctest::Approx;

class Chance {
 public:
  explicit Chance(unsigned seed) : bits_(seed) {}
  bool one_in(unsigned n) { return bits_() % n == 0; }
  std::int64_t upto(std::int64_t n) {
    return static_cast<std::int64_t>(bits_() % static_cast<std::uint64_t>(n + 1));
  }

 private:
  std::mt19937_64 bits_;
};

/// Most steps alike, some with a fraction, some of them holes.
logs::Microseconds step_us(Chance& chance, std::int64_t usual_s) {
  if (chance.one_in(60)) return chance.upto(20'000'000'000) + 1'000;
  if (chance.one_in(3)) return usual_s * 500'000 + 1000 * chance.upto(1000 * usual_s) + 1000;
  return usual_s * 1'000'000;
}

/// Off, low or high for a while.
double value_of(Chance& chance, double before) {
  if (chance.one_in(25)) return kNothing;
  if (!std::isnan(before) && !chance.one_in(3)) return before;
  if (chance.one_in(3)) return 0;
  return static_cast<double>(chance.upto(chance.one_in(4) ? 20'000 : 400)) / 10;
}

std::vector<logs::Reading> log_of_chance(Chance& chance, logs::Kind kind) {
  constexpr std::int64_t kUsual_s[] = {1, 6, 60, 300, 900, 3600};
  const std::int64_t usual_s = kUsual_s[chance.upto(5)];
  const std::int64_t rows = 3 + chance.upto(usual_s < 300 ? 3000 : 300);
  logs::Microseconds at_us = kMonday_us + chance.upto(86'400'000) * 1000;
  const double tick_wh = chance.one_in(2) ? 10 : 0.1;
  double value = 0;
  double counter_wh = 1000;
  std::vector<logs::Reading> log;
  for (std::int64_t i = 0; i < rows; ++i) {
    value = value_of(chance, value);
    if (!std::isnan(value)) counter_wh += value * static_cast<double>(usual_s) / 3600;
    if (chance.one_in(500)) counter_wh = 0;
    const double shown_wh =
        std::isnan(value) ? kNothing : std::floor(counter_wh / tick_wh) * tick_wh;
    log.push_back({at_us, kind == logs::Kind::counter ? shown_wh : value});
    at_us += step_us(chance, usual_s);
  }
  return log;
}

/// An invented zone: an odd offset and a change on each of some days, by an hour or by half of one.
calendar::ZoneRules zone_of_chance(Chance& chance) {
  using std::chrono::minutes;
  calendar::ZoneRules zone{minutes{15 * (chance.upto(100) - 50)}, {}};
  auto offset = zone.first_utc_offset;
  auto at = calendar::Instant{std::chrono::seconds{kMonday_us / 1'000'000}};
  for (int i = 0; i < 8; ++i) {
    at += minutes{10 * (60 + chance.upto(300))};
    offset += i % 2 == 0 ? minutes{-60} : minutes{30};
    zone.changes.push_back({at, offset});
  }
  return zone;
}

void check_totals(const metering::Measurement& got, const SlowSums& slow) {
  double seconds = 0;
  double joules = 0;
  double lowest_w = HUGE_VAL;
  double highest_w = 0;
  for (const SlowInterval& interval : slow.kept) {
    seconds += interval.seconds();
    joules += interval.seconds() * interval.watts;
    lowest_w = std::min(lowest_w, interval.watts);
    highest_w = std::max(highest_w, interval.watts);
  }
  CHECK(got.measured.kept.seconds == Approx(seconds).epsilon(1e-9));
  CHECK(got.measured.kept.joules == Approx(joules).epsilon(1e-9));
  CHECK(got.coverage.covered_hours == Approx(seconds / 3600).epsilon(1e-9));
  CHECK(got.coverage.covered_hours + got.coverage.dropped_hours ==
        Approx(got.coverage.span_hours()).epsilon(1e-9));
  CHECK(got.measured.lowest_w == Approx(slow.kept.empty() ? 0 : lowest_w).epsilon(1e-9));
  CHECK(got.measured.highest_w == Approx(highest_w).epsilon(1e-9));
  CHECK(got.coverage.longest_zero_s == Approx(slow_longest_zero_s(slow)).epsilon(1e-9));
  CHECK(got.coverage.restarts == slow.restarts);
}

void check_hours(const metering::Measured& got, std::map<std::int64_t, metering::Drawn> slow) {
  for (std::size_t i = 0; i < got.hours.size(); ++i) {
    const metering::Drawn& expected = slow[got.first_hour + static_cast<std::int64_t>(i)];
    REQUIRE(std::abs(got.hours[i].seconds - expected.seconds) < 1e-5);
    REQUIRE(std::abs(got.hours[i].joules - expected.joules) < 1e-5 * (1 + expected.joules));
    slow.erase(got.first_hour + static_cast<std::int64_t>(i));
  }
  for (const auto& [hour, drawn] : slow) REQUIRE(drawn.seconds < 1e-5);
}

using BySeconds = std::map<std::size_t, double>;

/// Not more than a microsecond in each interval apart.
bool same(const BySeconds& a, const BySeconds& b) {
  if (a.size() != b.size()) return false;
  for (auto i = a.begin(), j = b.begin(); i != a.end(); ++i, ++j) {
    if (i->first != j->first || std::abs(i->second - j->second) > 1e-4) return false;
  }
  return true;
}

// Where binary fractions lie at the edge of a bin they may fall on either side: this test has none
// but counters and energies, whose classes are left to the others.
void check_watts(const metering::Measured& got, const SlowSums& slow) {
  BySeconds bins;
  BySeconds classes;
  for (const SlowInterval& interval : slow.kept) {
    std::size_t bin = 0;
    while (metering::lower_w(bin + 1) <= interval.watts) ++bin;
    bins[bin] += interval.seconds();
    classes[bin / metering::kBinsOfClass] += interval.seconds();
  }
  BySeconds got_bins;
  for (std::size_t bin = 0; bin < got.histogram.size(); ++bin) {
    if (got.histogram[bin].seconds > 0) got_bins[bin] = got.histogram[bin].seconds;
  }
  BySeconds got_classes;
  for (const auto& parcel : got.parcels) got_classes[parcel.watt_class] += parcel.drawn.seconds;
  CHECK(same(got_bins, bins));
  CHECK(same(got_classes, classes));
}

/// Energy by cell of the parcels.
std::map<std::int64_t, double> slow_cells(const SlowSums& slow) {
  std::map<std::int64_t, double> cells;
  const double begin_s = slow.kept.empty() ? 0 : std::min(0.0, slow.kept.front().start_s);
  const double shift_s = -60 * std::floor(begin_s / 60);
  for (const SlowInterval& interval : slow.kept) {
    if (!interval.by_hour) continue;
    cells[std::llround(std::floor((interval.start_s + shift_s) / 60 + 1e-10))] +=
        interval.seconds() * interval.watts;
  }
  return cells;
}

void check_cells(const metering::Measured& got, const SlowSums& slow) {
  auto cells = slow_cells(slow);
  for (const auto& parcel : got.parcels) cells[parcel.minute] -= parcel.drawn.joules;
  for (const auto& [cell, joules] : cells) REQUIRE(std::abs(joules) < 1e-5 * (1 + got.kept.joules));
}

/// Uses here and there over the log, which overlap.
metering::Activity activity_of_chance(Chance& chance, const std::vector<logs::Reading>& log) {
  metering::Activity activity{{"films", "backups"}, {}};
  const std::int64_t span_us = log.back().at_us - log.front().at_us;
  for (int i = 0; i < 12; ++i) {
    const logs::Microseconds from_us = log.front().at_us - 1000 + chance.upto(span_us);
    activity.uses.push_back({static_cast<std::size_t>(chance.upto(1)), from_us,
                             from_us + chance.upto(span_us / 5),
                             static_cast<double>(chance.upto(4)) / 2});
  }
  return activity;
}

double mean_units(const metering::Activity& activity, std::size_t workload, double from_s,
                  double to_s, logs::Microseconds first_us) {
  double unit_seconds = 0;
  for (const metering::NotedUse& use : activity.uses) {
    const double start_s = static_cast<double>(use.start_us - first_us) / 1e6;
    const double end_s = static_cast<double>(use.end_us - first_us) / 1e6;
    const double both_s = std::min(end_s, to_s) - std::max(start_s, from_s);
    if (use.workload == workload && both_s > 0) unit_seconds += both_s * use.units;
  }
  return unit_seconds / (to_s - from_s);
}

/// Seconds by units of both workloads, in millionths.
using ByUnits = std::map<std::pair<long long, long long>, double>;

void check_units(const metering::Measured& got, const SlowSums& slow,
                 const metering::Activity& activity, logs::Microseconds first_us) {
  ByUnits seconds;
  for (const SlowInterval& interval : slow.kept) {
    if (!interval.by_hour) continue;
    const auto units = [&](std::size_t w) {
      return std::llround(1e6 *
                          mean_units(activity, w, interval.start_s, interval.end_s, first_us));
    };
    seconds[{units(0), units(1)}] += interval.seconds();
  }
  for (const auto& parcel : got.parcels) {
    const Eigen::VectorXd& row = got.designs.at(parcel.design);
    seconds[{std::llround(1e6 * row[0]), std::llround(1e6 * row[1])}] -= parcel.drawn.seconds;
  }
  for (const auto& [units, left_s] : seconds) {
    REQUIRE(std::abs(left_s) < 1e-4);
  }
}

void check_log_of_chance(const logs::Meaning& meaning, unsigned seed) {
  CAPTURE(seed);
  Chance chance(seed);
  const auto log = log_of_chance(chance, meaning.kind);
  const calendar::ZoneRules zone = zone_of_chance(chance);
  std::optional<double> gap_s;
  if (chance.one_in(3)) gap_s = static_cast<double>(1 + chance.upto(2000));
  const metering::Activity activity = activity_of_chance(chance, log);
  const auto got = measured(log, meaning, {zone, gap_s, activity});
  REQUIRE_FALSE(got.coverage.change_only);
  const SlowSums slow = slow_sums(log, meaning, gap_s);
  const bool same_gap = got.coverage.gap_s == slow.gap_s;  // Infinite of counters.
  CHECK((same_gap || got.coverage.gap_s == Approx(slow.gap_s)));
  check_totals(got, slow);
  check_hours(got.measured, slow_hours(slow, log.front().at_us, zone));
  check_cells(got.measured, slow);
  check_units(got.measured, slow, activity, log.front().at_us);
  if (meaning.kind == logs::Kind::power) check_watts(got.measured, slow);
}

TEST_CASE("logs of power: sums are those of a list of all intervals") {
  for (unsigned seed = 1; seed <= 40; ++seed) check_log_of_chance(kPower, seed);
}

TEST_CASE("logs of energy stamped at the start: sums are those of a list of all intervals") {
  for (unsigned seed = 1; seed <= 30; ++seed) check_log_of_chance(kEnergyFrom, seed);
}

TEST_CASE("logs of energy stamped at the end: sums are those of a list of all intervals") {
  for (unsigned seed = 1; seed <= 30; ++seed) check_log_of_chance(kEnergyUntil, seed);
}

TEST_CASE("logs of counters: sums are those of a list of all intervals") {
  for (unsigned seed = 1; seed <= 40; ++seed) check_log_of_chance(kCounter, seed);
}

}  // namespace
}  // namespace wattweek::tests
