// Readings into the order of time, against a stable sort.

#include "logs/in_order.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <numeric>
#include <random>
#include <vector>

#include "logged.hpp"

using namespace wattweek::logs;

namespace {

// Of equal times the last that came.
std::vector<Reading> sorted(std::vector<Reading> readings) {
  std::stable_sort(readings.begin(), readings.end(),
                   [](const Reading& a, const Reading& b) { return a.at_us < b.at_us; });
  std::vector<Reading> kept;
  for (const Reading& reading : readings) {
    if (!kept.empty() && kept.back().at_us == reading.at_us) kept.pop_back();
    kept.push_back(reading);
  }
  return kept;
}

bool same(const std::vector<Reading>& a, const std::vector<Reading>& b) {
  return std::equal(a.begin(), a.end(), b.begin(), b.end(), [](const Reading& x, const Reading& y) {
    return x.at_us == y.at_us && x.value == y.value;
  });
}

// False where the readings stand farther out of order than was said.
bool ordered(const std::vector<Reading>& readings, Disorder most, Kept& kept) {
  InOrder in_order(kept, most);
  for (const Reading& reading : readings) {
    if (!in_order.add(reading)) return false;
  }
  in_order.finish();
  CHECK(in_order.used() == kept.readings.size());
  CHECK(in_order.used() + in_order.same_time() == readings.size());
  return true;
}

// Each a step after the one before, some at the same time; moved by up to so many places.
std::vector<Reading> shuffled(std::size_t count, std::size_t places, std::mt19937& random) {
  std::vector<std::pair<std::size_t, Reading>> keyed;
  for (std::size_t i = 0; i < count; ++i) {
    const auto at = static_cast<Microseconds>(i - i % (1 + random() % 3));
    keyed.push_back({i + random() % (places + 1), {at, static_cast<double>(i)}});
  }
  std::stable_sort(keyed.begin(), keyed.end(),
                   [](const auto& a, const auto& b) { return a.first < b.first; });
  std::vector<Reading> readings;
  for (const auto& [key, reading] : keyed) readings.push_back(reading);
  return readings;
}

}  // namespace

TEST_CASE("readings in order, some at one time, are handed on as they come") {
  std::mt19937 random(1);
  std::vector<Reading> readings = shuffled(10'000, 0, random);
  std::stable_sort(readings.begin(), readings.end(),
                   [](const Reading& a, const Reading& b) { return a.at_us < b.at_us; });
  Kept kept;
  REQUIRE(ordered(readings, Disorder::none, kept));
  CHECK(same(kept.readings, sorted(readings)));
}

TEST_CASE("readings in any order are refused by who takes them in order") {
  Kept kept;
  CHECK_FALSE(ordered({{5, 1}, {4, 2}}, Disorder::none, kept));
}

TEST_CASE("readings of chance are put in order as a stable sort does") {
  std::mt19937 random(2);
  for (std::size_t count = 0; count < 200; ++count) {
    const std::vector<Reading> readings = shuffled(count, count, random);
    for (const Disorder most : {Disorder::a_little, Disorder::a_million, Disorder::any}) {
      Kept kept;
      REQUIRE(ordered(readings, most, kept));
      CHECK(same(kept.readings, sorted(readings)));
    }
  }
}

TEST_CASE("readings that begin with the newest are turned around") {
  std::vector<Reading> readings;
  for (Microseconds i = 3'000; i > 0; --i) readings.push_back({i, static_cast<double>(i)});
  Kept kept;
  REQUIRE(ordered(readings, Disorder::a_million, kept));
  CHECK(same(kept.readings, sorted(readings)));
  readings.push_back({1, 7});  // At the time of the one before.
  Kept twice;
  REQUIRE(ordered(readings, Disorder::a_million, twice));
  CHECK(twice.readings.front().value == 7);
  CHECK(same(twice.readings, sorted(readings)));
}

TEST_CASE("three million readings up to half a million apart from their place are put in order") {
  std::mt19937 random(3);
  const std::vector<Reading> readings = shuffled(3'000'000, 500'000, random);
  Kept kept;
  REQUIRE(ordered(readings, Disorder::a_million, kept));
  CHECK(same(kept.readings, sorted(readings)));
}

TEST_CASE("readings up to some ten thousand apart from their place need but a little held back") {
  std::mt19937 random(5);
  const std::vector<Reading> readings = shuffled(400'000, 30'000, random);
  Kept kept;
  REQUIRE(ordered(readings, Disorder::a_little, kept));
  CHECK(same(kept.readings, sorted(readings)));
  const std::vector<Reading> wilder = shuffled(400'000, 200'000, random);
  Kept few;
  CHECK_FALSE(ordered(wilder, Disorder::a_little, few));
  Kept more;
  REQUIRE(ordered(wilder, Disorder::a_million, more));
  CHECK(same(more.readings, sorted(wilder)));
}

TEST_CASE("a reading farther than a million from its place needs all to be held") {
  std::vector<Reading> readings;
  for (Microseconds i = 1; i <= 2'500'000; ++i) readings.push_back({i, static_cast<double>(i)});
  readings.push_back({0, 7});
  Kept kept;
  CHECK_FALSE(ordered(readings, Disorder::a_million, kept));
  Kept whole;
  REQUIRE(ordered(readings, Disorder::any, whole));
  CHECK(same(whole.readings, sorted(readings)));
}
