// Units in use while readings were taken.

#include <doctest/doctest.h>

#include <map>

#include "logs.hpp"

namespace wattweek::tests {
namespace {

using doctest::Approx;
using metering::Activity;
using metering::NotedUse;

NotedUse use(std::size_t workload, double from_s, double to_s, double units = 1) {
  return {workload, monday_plus(from_s), monday_plus(to_s), units};
}

/// Rows each minute of `minutes` minutes at 10 W.
std::vector<logs::Reading> minutes_of(int minutes) {
  std::vector<At> rows;
  for (int i = 0; i <= minutes; ++i) rows.push_back({i * 60.0, 10});
  return log_of(rows);
}

/// Seconds by units in use.
std::map<std::vector<double>, double> seconds_by_units(const metering::Measured& all) {
  std::map<std::vector<double>, double> sums;
  for (const auto& parcel : all.parcels) {
    const Eigen::VectorXd& row = all.designs.at(parcel.design);
    sums[std::vector<double>(row.data(), row.data() + row.size())] += parcel.drawn.seconds;
  }
  return sums;
}

std::map<std::vector<double>, double> measured_with(const Activity& activity, int minutes) {
  return seconds_by_units(measured(minutes_of(minutes), kPower, {{}, {}, activity}).measured);
}

using ByUnits = std::map<std::vector<double>, double>;

TEST_CASE("without noted uses there is one row of units and it is empty") {
  const auto all = measured(minutes_of(3), kPower).measured;
  REQUIRE(all.designs.size() == 1);
  CHECK(all.designs.front().size() == 0);
}

TEST_CASE("row 0 is no unit in use also where the log begins amid a use") {
  const Activity activity{{"films", "backups"}, {use(1, -60, 120)}};
  const auto all = measured(minutes_of(5), kPower, {{}, {}, activity}).measured;
  REQUIRE(all.designs.size() == 2);
  CHECK(all.designs[0] == Eigen::Vector2d(0, 0));
  CHECK(all.designs[1] == Eigen::Vector2d(0, 1));
  CHECK(all.parcels.front().design == 1);
  CHECK(seconds_by_units(all) == ByUnits{{{0, 0}, 180}, {{0, 1}, 120}});
}

TEST_CASE("units of uses that overlap add up and leave no crumbs when they end") {
  const Activity activity{{"films"},
                          {use(0, 60, 240, 0.1), use(0, 120, 300, 0.2), use(0, 180, 240, 0.7)}};
  const auto sums = measured_with(activity, 6);
  CHECK(sums ==
        ByUnits{{{0}, 120}, {{0.1}, 60}, {{0.1 + 0.2}, 60}, {{0.1 + 0.2 + 0.7}, 60}, {{0.2}, 60}});
}

TEST_CASE("a use that follows another at once leaves no moment without") {
  const Activity activity{{"films"}, {use(0, 60, 120), use(0, 120, 180), use(0, 300, 300)}};
  CHECK(measured_with(activity, 6) == ByUnits{{{0}, 240}, {{1}, 120}});
}

TEST_CASE("an interval in which uses change has the time mean of their units") {
  const Activity activity{{"films", "backups"}, {use(0, 15, 75, 2), use(1, 45, 60, 4)}};
  const auto sums = measured_with(activity, 3);
  // First minute: 45 s of 2 and 15 s of 4; second minute: 15 s of 2.
  CHECK(sums == ByUnits{{{1.5, 1}, 60}, {{0.5, 0}, 60}, {{0, 0}, 60}});
}

TEST_CASE("samples of intervals in which uses change are marked, even where the mean occurs") {
  // Half a unit for three minutes, with nothing before and a whole unit after.
  const Activity activity{{"films"}, {use(0, 60, 240, 0.5), use(0, 270, 420)}};
  const auto all = measured(minutes_of(8), kPower, {{}, {}, activity}).measured;
  REQUIRE(all.changing.size() == all.designs.size());
  std::map<std::pair<double, bool>, double> sums;
  for (const auto& parcel : all.parcels) {
    sums[{all.designs[parcel.design](0), all.changing[parcel.design]}] += parcel.drawn.seconds;
  }
  using Sums = std::map<std::pair<double, bool>, double>;
  CHECK(sums == Sums{{{0, false}, 120}, {{0.5, false}, 180}, {{0.5, true}, 60}, {{1, false}, 120}});
}

TEST_CASE("energies of intervals in which uses change are as good as others") {
  const Activity activity{{"films"}, {use(0, 90, 240)}};
  CHECK(measured(minutes_of(8), kEnergyFrom, {{}, {}, activity}).measured.changing.empty());
  CHECK(measured(minutes_of(8), kCounter, {{}, {}, activity}).measured.changing.empty());
}

TEST_CASE("time without use has a histogram of its own") {
  const Activity activity{{"films"}, {use(0, 90, 240)}};
  std::vector<At> rows;
  for (int i = 0; i <= 8; ++i) rows.push_back({i * 60.0, 10.0 + i});
  const auto all = measured(log_of(rows), kPower, {{}, {}, activity}).measured;
  REQUIRE(all.unused.size() == all.histogram.size());
  double unused_s = 0;
  double unused_j = 0;
  for (const auto& drawn : all.unused) {
    unused_s += drawn.seconds;
    unused_j += drawn.joules;
  }
  // The first minute, at 10 W, and from the fifth on, at 14 to 17 W; the second is half in use.
  CHECK(unused_s == 300);
  CHECK(unused_j == Approx(60 * (10 + 14 + 15 + 16 + 17)));
}

TEST_CASE("the same units in use are the same row whenever they are") {
  Activity activity{{"films"}, {}};
  for (int hour = 0; hour < 20; ++hour) {
    activity.uses.push_back(use(0, hour * 3600.0, hour * 3600.0 + 1800));
    activity.uses.push_back(use(0, hour * 3600.0 + 600, hour * 3600.0 + 1200));
  }
  CHECK(measured(minutes_of(1200), kPower, {{}, {}, activity}).measured.designs.size() == 3);
}

}  // namespace
}  // namespace wattweek::tests
