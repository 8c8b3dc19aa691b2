#include "wattweek/power/loads.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <vector>

#include "../support/about.hpp"

namespace wattweek::power {
namespace {

using tests::about;

// A server and a store, both capped: 12 films at most on both, by load on the one and in a group
// on the other, where a backup shares the group.
struct Home {
  DeviceLaw server;
  DeviceLaw store;
  UnitsInUse films = units_in_use({12, 0.3, model::Pattern::independent});
  UnitsInUse backup = units_in_use({1, 0.25, model::Pattern::together});

  Home() {
    server.idle_w = 10;
    server.max_w = 45;
    server.full_load_w = 40;
    server.curve = model::Curve::concave;
    server.tasks = {task(0), task(1)};
    server.tasks[0].load_per_unit = 0.11;
    server.tasks[1].first_w = server.tasks[1].each_w = 3;
    store.idle_w = 5;
    store.max_w = 21;
    store.count = 2;
    store.group_w = {8};
    store.tasks = {task(0), task(1)};
    store.tasks[0].first_w = store.tasks[0].each_w = 1.5;
    store.tasks[0].group = store.tasks[1].group = 0;
  }

  static TaskLaw task(std::size_t workload) {
    TaskLaw law;
    law.workload = workload;
    return law;
  }

  // Rule by rule, one outcome.
  double above_idle_w(double film_units, double backup_units) const {
    const double load = std::min(1.0, film_units * 0.11);
    const double of_server = 40 * (2 * load - std::pow(load, 1.4)) + 3 * backup_units;
    const double group = film_units + backup_units > 0 ? 8 : 0;
    return std::min(35.0, of_server) + 2 * std::min(16.0, 1.5 * film_units + group);
  }
};

void check_loads(const std::vector<Load>& loads, const std::map<double, double>& expected) {
  REQUIRE(loads.size() == expected.size());
  auto want = expected.begin();
  for (const Load& load : loads) {
    CHECK(load.above_idle_w == about(want->first));
    CHECK(load.probability == about(want->second));
    ++want;
  }
}

TEST_CASE("two coupled devices with shared workloads draw what each outcome by itself says") {
  const Home home;
  std::map<double, double> expected;
  for (std::size_t f = 0; f < home.films.units.size(); ++f) {
    for (std::size_t b = 0; b < home.backup.units.size(); ++b) {
      expected[home.above_idle_w(home.films.units[f], home.backup.units[b])] +=
          home.films.probability[f] * home.backup.probability[b];
    }
  }
  LoadReckoner reckoner;
  std::vector<Load> loads;
  const std::vector<const UnitsInUse*> in_use{&home.films, &home.backup};
  REQUIRE(reckoner.reckon({{&home.server, in_use}, {&home.store, in_use}}, loads));
  check_loads(loads, expected);
}

TEST_CASE("two groups of one device are drawn where one of their members is in use") {
  const std::vector<double> each_w = {2, 2, 2, 0.5, 2};
  const std::vector<std::size_t> group = {0, 1, 1, 0, 0};
  DeviceLaw law;
  law.group_w = {8, 3};
  law.max_w = 16;
  const UnitsInUse in_use = units_in_use({1, 0.25, model::Pattern::together});
  for (std::size_t t = 0; t < each_w.size(); ++t) {
    law.tasks.push_back(Home::task(t));
    law.tasks[t].first_w = each_w[t];
    law.tasks[t].group = group[t];
  }
  std::map<double, double> expected;
  for (unsigned outcome = 0; outcome < 32; ++outcome) {
    double probability = 1;
    double watts = 0;
    std::vector<double> group_w = {0, 0};
    for (std::size_t t = 0; t < each_w.size(); ++t) {
      const bool is_used = (outcome >> t & 1U) != 0;
      probability *= is_used ? 0.25 : 0.75;
      if (!is_used) continue;
      watts += each_w[t];
      group_w[group[t]] = law.group_w[group[t]];
    }
    expected[std::min(16.0, watts + group_w[0] + group_w[1])] += probability;
  }
  LoadReckoner reckoner;
  std::vector<Load> loads;
  REQUIRE(reckoner.reckon({{&law, std::vector<const UnitsInUse*>(5, &in_use)}}, loads));
  check_loads(loads, expected);
}

TEST_CASE("no device that is on draws nothing above idle, with certainty") {
  LoadReckoner reckoner;
  std::vector<Load> loads;
  REQUIRE(reckoner.reckon({}, loads));
  REQUIRE(loads.size() == 1);
  CHECK(loads[0].above_idle_w == 0);
  CHECK(loads[0].probability == 1);
}

// A device whose sums in no order fall together: 2^k watts, each in use half of the time.
TEST_CASE("a reckoner of loads forms so many joint outcomes and no more") {
  DeviceLaw law;
  const UnitsInUse coin = units_in_use({1, 0.5, model::Pattern::together});
  std::vector<const UnitsInUse*> in_use;
  double watts = 1;
  for (std::size_t k = 0; k < 21; ++k, watts *= 2) {
    law.tasks.push_back(Home::task(k));
    law.tasks.back().first_w = watts;
    in_use.push_back(&coin);
  }
  // 2 + 4 + ... + 2^21 = 2^22 - 2 outcomes leave 2 of 2^22: one workload fits, two do not.
  LoadReckoner reckoner;
  std::vector<Load> loads;
  REQUIRE(reckoner.reckon({{&law, in_use}}, loads));
  CHECK(loads.size() == 1U << 21U);
  law.tasks.resize(1);
  in_use.resize(1);
  CHECK(reckoner.reckon({{&law, in_use}}, loads));
  CHECK_FALSE(reckoner.reckon({{&law, in_use}}, loads));
}

}  // namespace
}  // namespace wattweek::power
