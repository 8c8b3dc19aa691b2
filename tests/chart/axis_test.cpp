#include "wattweek/chart/axis.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <random>
#include <string>

#include "plot.hpp"

namespace wattweek::chart {
namespace {

// Ranges of all sizes, on both sides of zero and around it.
Range range_of_chance(std::mt19937& random) {
  const auto part = [&] { return static_cast<double>(random() % 20001) / 10000 - 1; };
  const double size = std::pow(10.0, static_cast<double>(random() % 25) - 12);
  const double a = part() * size;
  const double b = random() % 4 == 0 ? a + part() * size / 1000 : part() * size;
  return {std::min(a, b), std::max(a, b)};
}

bool is_nice(double step) {
  const double digit = step / std::pow(10.0, std::floor(std::log10(step) + 1e-9));
  for (const double nice : {1.0, 2.0, 5.0}) {
    if (std::fabs(digit - nice) < 1e-6) return true;
  }
  return false;
}

TEST_CASE("marks of an axis are 1, 2 or 5 times a power of ten apart and hold all values") {
  std::mt19937 random(1);
  for (int i = 0; i < 5000; ++i) {
    const Range range = range_of_chance(random);
    const int most = 3 + static_cast<int>(random() % 8);
    const Ticks ticks = nice_ticks(range, most);
    CAPTURE(range.low);
    CAPTURE(range.high);
    CHECK(is_nice(ticks.step()));
    CHECK(ticks.count <= most);
    CHECK(ticks.count >= 2);
    CHECK(ticks.at(0) <= range.low + 2e-9 * ticks.step());
    CHECK(ticks.at(ticks.count - 1) >= range.high - 2e-9 * ticks.step());
    const double whole = ticks.at(0) / ticks.step();
    CHECK(std::fabs(whole - std::round(whole)) <= 1e-9 * std::max(1.0, std::fabs(whole)));
  }
}

TEST_CASE("no mark could be left out at either end, and no finer step would do") {
  std::mt19937 random(2);
  for (int i = 0; i < 5000; ++i) {
    const Range range = range_of_chance(random);
    if (range.high - range.low < 1e-6 * std::fabs(range.high)) continue;
    const Ticks ticks = nice_ticks(range, 7);
    CHECK(ticks.at(1) > range.low);
    CHECK(ticks.at(ticks.count - 2) < range.high);
    // A dumber count: the next finer step's marks, one after the other.
    const double finer = ticks.mantissa == 5 ? ticks.step() / 2.5 : ticks.step() / 2;
    double mark = std::floor(range.low / finer + 1e-7) * finer;
    int count = 1;
    for (; mark < range.high - 1e-7 * finer; mark += finer) ++count;
    CHECK(count > 7);
  }
}

TEST_CASE("a mark is the double that its digits mean") {
  const Ticks tenths = nice_ticks({0, 0.7}, 8);
  CHECK(tenths.count == 8);
  CHECK(tenths.at(3) == 0.3);
  CHECK(tenths.at(7) == 0.7);
  CHECK(tick_text(tenths, 3) == "0.3");
  const Ticks thousands = nice_ticks({-2500, 9000}, 8);
  CHECK(thousands.at(0) == -4000);
  CHECK(thousands.step() == 2000);
  CHECK(tick_text(thousands, 2) == "0");
}

TEST_CASE("an axis from zero has a mark at zero") {
  for (const Range& range : {Range{3, 40}, Range{-7, -2}, Range{-3, 8}}) {
    const Ticks ticks = nice_ticks(with_zero(range), 6);
    bool zero = false;
    for (int i = 0; i < ticks.count; ++i) zero = zero || ticks.at(i) == 0;
    CHECK(zero);
  }
}

TEST_CASE("values that are all the same still get an axis around them") {
  for (const double value : {0.0, 12.0, -3.5, 1e-250, 1e12, 0.1 + 0.2}) {
    const Ticks ticks = nice_ticks({value, value}, 5);
    CAPTURE(value);
    CHECK(ticks.count >= 2);
    CHECK(ticks.at(0) <= value);
    CHECK(ticks.at(ticks.count - 1) >= value);
    CHECK(ticks.at(0) < ticks.at(1));
  }
}

TEST_CASE("marks within values are those that an axis has left when its ends are cut off") {
  const Ticks cut = within(nice_ticks({150, 8760}, 8), {150, 8760});
  CHECK(cut.count == 4);
  CHECK(cut.at(0) == 2000);
  CHECK(cut.at(3) == 8000);
  CHECK(within(nice_ticks({4.2, 4.3}, 3), {4.21, 4.22}).count == 0);
}

TEST_CASE("a scale grows or falls all the way, and takes its ends to its ends") {
  std::mt19937 random(3);
  for (int i = 0; i < 1000; ++i) {
    Range range = range_of_chance(random);
    if (!(range.low < range.high)) continue;
    const Scale right{range, 10, 470};
    const Scale up{range, 240, 20};
    CHECK(right.at(range.low) == 10);
    CHECK(right.at(range.high) == 470);
    CHECK(up.at(range.high) == 20);
    double before = range.low;
    for (int part = 1; part <= 16; ++part) {
      const double value = range.low + (range.high - range.low) * part / 16;
      CHECK(right.at(value) > right.at(before));
      CHECK(up.at(value) < up.at(before));
      before = value;
    }
  }
}

TEST_CASE("an axis takes fewer marks where their numbers are long") {
  const auto count = [](double high) { return ticks_along({0, high}, 300).count; };
  CHECK(count(7) > count(7e9));
  CHECK(count(7e30) >= 2);
}

}  // namespace
}  // namespace wattweek::chart
