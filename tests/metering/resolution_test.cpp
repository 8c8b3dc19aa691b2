// The smallest step between watts that a log shows.

#include <doctest/doctest.h>

#include <random>

#include "logs.hpp"

namespace wattweek::tests {
namespace {

using doctest::Approx;

double resolution_w(const std::vector<double>& values, const logs::Meaning& meaning = kPower,
                    double step_s = 60) {
  std::vector<At> rows;
  for (const double value : values)
    rows.push_back({static_cast<double>(rows.size()) * step_s, value});
  return measured(log_of(rows), meaning).measured.resolution_w;
}

TEST_CASE("a log of 9 and 11 W has steps of 2 W and one of a single height none") {
  CHECK(resolution_w({9, 11, 11, 9, 9, 11}) == 2);
  CHECK(resolution_w({7.3, 7.3, kNothing, 7.3}) == 0);
  CHECK(resolution_w({7.3}) == 0);
}

TEST_CASE("tenths and thousandths of a watt are found in spite of binary fractions") {
  std::vector<double> tenths;
  std::vector<double> from_kilowatts;
  std::mt19937 chance(2);
  for (int i = 0; i < 2000; ++i) {
    tenths.push_back(static_cast<double>(chance() % 9000) / 10);
    from_kilowatts.push_back(static_cast<double>(chance() % 9000) / 1e6 * 1000);
  }
  CHECK(resolution_w(tenths) == Approx(0.1));
  CHECK(resolution_w(from_kilowatts) == Approx(0.001));
  CHECK(resolution_w({0, 1e6, 999'999.9998}) == Approx(0.0002));
}

TEST_CASE("the step of energies and of counters is a tick in a typical step") {
  // 0.5 Wh in a quarter-hour is 2 W.
  CHECK(resolution_w({3, 4.5, 3, 3.5}, kEnergyFrom, 900) == Approx(2));
  CHECK(resolution_w({100, 110, 130, 130, 0, 10}, kCounter, 3600) == Approx(10));
  CHECK(resolution_w({75.133e3, 75.134e3, 3, 5}, kCounter, 60) == Approx(60));
}

// Energies may be what a counter rose by, or each rounded by itself: the log does not say.
TEST_CASE("counters carry what a step leaves out, power and energies need not") {
  const std::vector<logs::Reading> log = log_of({{0, 10}, {60, 20}, {120, 30}});
  CHECK_FALSE(measured(log, kPower).measured.carries_rest);
  CHECK_FALSE(measured(log, kEnergyFrom).measured.carries_rest);
  CHECK(measured(log, kCounter).measured.carries_rest);
}

}  // namespace
}  // namespace wattweek::tests
