// A log in parcels: not many of them, however long the log is.

#include <doctest/doctest.h>

#include <algorithm>

#include "logs.hpp"

namespace wattweek::tests {
namespace {

using doctest::Approx;

bool in_order(const std::vector<metering::Parcel>& parcels) {
  return std::is_sorted(parcels.begin(), parcels.end(),
                        [](const auto& a, const auto& b) { return a.minute < b.minute; });
}

double seconds_of(const std::vector<metering::Parcel>& parcels) {
  double sum = 0;
  for (const auto& parcel : parcels) sum += parcel.drawn.seconds;
  return sum;
}

TEST_CASE("intervals of a minute are one parcel where their watts are of one class") {
  const auto all =
      measured(log_of({{0, 30}, {20, 30.1}, {40, 80}, {50, 30}, {60, 30}, {119, 30}, {125, 1}}),
               kPower)
          .measured;
  REQUIRE(all.parcels.size() == 3);
  CHECK(all.parcels[0].minute == 0);
  CHECK(all.parcels[0].drawn.seconds == Approx(50));
  CHECK(all.parcels[0].drawn.joules == Approx(30 * 20 + 30.1 * 20 + 30 * 10));
  CHECK(all.parcels[0].watt_class == metering::bin_of(30) / metering::kBinsOfClass);
  CHECK(all.parcels[1].watt_class == metering::bin_of(80) / metering::kBinsOfClass);
  // What starts in a minute belongs to it, though it ends in the next.
  CHECK(all.parcels[2].minute == 1);
  CHECK(all.parcels[2].drawn.seconds == Approx(65));
}

TEST_CASE("an interval that waited for the end of the log has its parcel at its time") {
  std::vector<At> rows;
  for (int i = 0; i < 40; ++i) rows.push_back({i * 500.0, i % 2 == 0 ? 5.0 : 50.0});
  rows.push_back({20'000, 5});
  rows.push_back({20'010, 5});
  rows.push_back({20'510, 5});
  const auto all = measured(log_of(rows), kPower).measured;
  CHECK(in_order(all.parcels));
  REQUIRE(all.parcels.size() == 41);
  CHECK(all.parcels[40].minute == 333);
  CHECK(all.parcels[40].drawn.seconds == Approx(510));
}

TEST_CASE("a long log has longer cells so that its parcels stay few") {
  // 700,000 minutes at one of two heights, which change each minute.
  std::vector<logs::Reading> log;
  for (int i = 0; i <= 700'000; ++i) {
    log.push_back({kMonday_us + i * 60'000'000LL, i % 2 == 0 ? 10.0 : 20.0});
  }
  const auto all = measured(log, kPower).measured;
  CHECK(all.parcel_seconds == 240);
  CHECK(all.parcels.size() == 350'000);
  CHECK(in_order(all.parcels));
  CHECK(seconds_of(all.parcels) == 700'000 * 60.0);
  CHECK(all.parcels.back().minute == 700'000 / 4 - 1);
  CHECK(all.parcels.back().drawn.seconds == 120);
}

TEST_CASE("so many different units in use that nothing can be merged still count in full") {
  metering::Activity activity{{"films"}, {}};
  std::vector<logs::Reading> log;
  for (int i = 0; i <= 600'000; ++i) {
    log.push_back({kMonday_us + i * 60'000'000LL, 10});
    activity.uses.push_back({0, log.back().at_us, log.back().at_us + 60'000'000, 1.0 + i});
  }
  const auto all = measured(log, kPower, {{}, {}, activity}).measured;
  CHECK(all.parcel_seconds <= 3840);
  CHECK(all.parcels.size() == 600'000);
  CHECK(seconds_of(all.parcels) == 600'000 * 60.0);
}

}  // namespace
}  // namespace wattweek::tests
