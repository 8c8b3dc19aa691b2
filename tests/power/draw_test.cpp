#include "wattweek/power/draw.hpp"

#include <doctest/doctest.h>

#include <numeric>

#include "../support/about.hpp"

using namespace wattweek::power;
using wattweek::model::Curve;
using wattweek::model::Pattern;
using wattweek::tests::about;
using wattweek::tests::exactly;

namespace {

struct Result {
  bool reckoned = false;
  Draw draw;
  double above_idle_w() const {
    return std::accumulate(draw.task_w.begin(), draw.task_w.end(), 0.0);
  }
};

Result draw_of(const DeviceLaw& law, const std::vector<UseLaw>& uses) {
  std::vector<UnitsInUse> units;
  for (const UseLaw& use : uses) units.push_back(units_in_use(use));
  std::vector<const UnitsInUse*> in_use;
  for (const UnitsInUse& u : units) in_use.push_back(&u);
  Result result;
  DrawReckoner reckoner;
  result.reckoned = reckoner.reckon(law, in_use, result.draw);
  return result;
}

TaskLaw watts_each(double each_w) {
  TaskLaw task;
  task.first_w = task.each_w = each_w;
  return task;
}

TaskLaw load_each(double load) {
  TaskLaw task;
  task.load_per_unit = load;
  return task;
}

}  // namespace

TEST_CASE("five streams of 3.1 W lift a box from 13.5 W to 29 W") {
  // Common practice, no source: 13.5 W with every service up, 29 W with five streams.
  DeviceLaw law;
  law.idle_w = 13.5;
  law.tasks = {watts_each(3.1)};
  const Result busy = draw_of(law, {{5, 1.0}});
  CHECK(law.idle_w + busy.above_idle_w() == exactly(29.0));
  CHECK(busy.draw.highest_w == exactly(29.0));
  CHECK(busy.draw.active == 1.0);
}

TEST_CASE("a cap acts on each outcome and not on the average") {
  // Binomial(5, 0.2) with two places: E[min(X, 2)] = 0.93504 (exact fractions).
  DeviceLaw law;
  law.idle_w = 10;
  law.max_w = 12;
  law.tasks = {watts_each(1)};
  const Result result = draw_of(law, {{5, 0.2, Pattern::independent}});
  CHECK(result.above_idle_w() == exactly(0.93504));
  CHECK(result.draw.highest_w == 12);
}

TEST_CASE("what a cap leaves is shared in proportion to what was asked for") {
  DeviceLaw law;
  law.idle_w = 10;
  law.max_w = 16;
  law.tasks = {watts_each(6), watts_each(2)};
  const Result both = draw_of(law, {{1, 1.0}, {1, 1.0}});
  CHECK(both.draw.task_w[0] == exactly(4.5));
  CHECK(both.draw.task_w[1] == exactly(1.5));
}

TEST_CASE("a curve acts on each outcome and not on the average") {
  // Common machine 20 W idle, 60 W busy: 70 % of the time at u = 0.05 and 30 % at u = 0.60 is
  // 30.90821727 W (DERIVED from the formula of Fan, Weber and Barroso).
  DeviceLaw law;
  law.idle_w = 20;
  law.full_load_w = 40;
  law.curve = Curve::concave;
  law.tasks = {load_each(0.05), load_each(0.55)};
  const Result result = draw_of(law, {{1, 1.0}, {1, 0.3}});
  CHECK(law.idle_w + result.above_idle_w() == about(30.90821727));
}

TEST_CASE("loads share the curve's watts in proportion to units times load") {
  DeviceLaw law;
  law.full_load_w = 40;
  law.curve = Curve::concave;
  law.tasks = {load_each(0.1), load_each(0.3)};
  const Result result = draw_of(law, {{2, 1.0}, {1, 1.0}});
  const double all_w = load_w(law, 0.5);
  CHECK(result.draw.task_w[0] == exactly(all_w * 0.4));
  CHECK(result.draw.task_w[1] == exactly(all_w * 0.6));
}

TEST_CASE("beyond full load the watts stay and the overload is counted") {
  DeviceLaw law;
  law.full_load_w = 40;
  law.tasks = {load_each(0.6), load_each(0.6)};
  const Result result = draw_of(law, {{1, 0.5}, {1, 0.5}});
  CHECK(result.above_idle_w() == exactly(0.5 * 24 + 0.25 * 40));
  CHECK(result.draw.overload == exactly(0.25));
}

TEST_CASE("a load of exactly one is full, not overloaded") {
  DeviceLaw law;
  law.full_load_w = 40;
  law.tasks = {load_each(0.1), load_each(0.2), load_each(0.7)};
  CHECK(draw_of(law, {{1, 1.0}, {1, 1.0}, {1, 1.0}}).draw.overload == 0);
}

TEST_CASE("disks that spin for all are paid once, in equal parts by those who use them") {
  DeviceLaw law;
  law.idle_w = 20;
  law.group_w = {8};
  law.tasks = {watts_each(0), watts_each(0), watts_each(0)};
  for (TaskLaw& task : law.tasks) task.group = 0;
  const Result result = draw_of(law, {{1, 0.5}, {1, 0.5}, {1, 1.0}});
  CHECK(result.above_idle_w() == exactly(8.0));
  // The third is always there: alone 1/4, with one other 1/2, with both 1/4 of the time.
  CHECK(result.draw.task_w[2] == exactly(8 * (0.25 + 0.5 / 2 + 0.25 / 3)));
  CHECK(result.draw.task_w[0] == exactly(8 * (0.25 / 2 + 0.25 / 3)));
}

TEST_CASE("a group that a single load switches on is paid by it, cap or no cap") {
  DeviceLaw law;
  law.idle_w = 10;
  law.full_load_w = 20;
  law.group_w = {5};
  law.tasks = {load_each(0.5), watts_each(2)};
  law.tasks[0].group = 0;
  const Result free = draw_of(law, {{1, 0.5}, {1, 0.5}});
  CHECK(free.draw.task_w[0] == exactly(0.5 * 15));
  CHECK(free.draw.task_w[1] == exactly(0.5 * 2));
  law.max_w = 26;
  const Result capped = draw_of(law, {{1, 0.5}, {1, 0.5}});
  CHECK(capped.draw.task_w[0] == exactly(0.25 * 15 + 0.25 * 15 * 16 / 17));
  CHECK(capped.draw.task_w[1] == exactly(0.25 * 2 + 0.25 * 2 * 16 / 17));
}

TEST_CASE("everything under one cap: curve, group and increments") {
  // By hand: both idle, one, the other, both; see each line.
  DeviceLaw law;
  law.idle_w = 10;
  law.max_w = 40;
  law.full_load_w = 30;
  law.group_w = {6};
  law.tasks = {load_each(0.8), watts_each(4)};
  law.tasks[0].group = 0;
  law.tasks[1].group = 0;
  const Result result = draw_of(law, {{1, 0.5}, {1, 0.25}});
  // Load alone: 24 + 6 = 30 W, not capped. Increment alone: 4 + 6 = 10 W. Both: 24 + 4 + 6 = 34,
  // capped to 30; the load asks for 27 of the 34, the increment for 7.
  CHECK(result.draw.task_w[0] == exactly(0.375 * 30 + 0.125 * 30 * 27 / 34));
  CHECK(result.draw.task_w[1] == exactly(0.125 * 10 + 0.125 * 30 * 7 / 34));
  CHECK(result.draw.highest_w == 40);
  CHECK(result.draw.active == exactly(1 - 0.5 * 0.75));
}

TEST_CASE("forty services under one cap are hundreds of outcomes and not 2^40") {
  DeviceLaw law;
  law.idle_w = 10;
  law.max_w = 60;
  std::vector<UseLaw> uses;
  for (int i = 0; i < 40; ++i) {
    law.tasks.push_back(watts_each(1.1 + 0.1 * (i % 7)));
    uses.push_back({1, 0.5});
  }
  const Result result = draw_of(law, uses);
  REQUIRE(result.reckoned);
  CHECK(result.above_idle_w() <= 50);
  CHECK(result.above_idle_w() > 20);
}

TEST_CASE("merged outcomes tell the same as outcomes kept apart") {
  // Twelve two-unit services: 3^12 outcomes one by one, against the lattice.
  DeviceLaw law;
  law.idle_w = 5;
  law.max_w = 25;
  law.full_load_w = 12;
  law.curve = Curve::concave;
  law.group_w = {3};
  std::vector<UseLaw> uses;
  for (int i = 0; i < 12; ++i) {
    TaskLaw task = i % 3 == 0 ? load_each(0.05 + 0.01 * i) : watts_each(0.7 + 0.1 * i);
    if (i % 4 == 1) task.group = 0;
    law.tasks.push_back(task);
    uses.push_back({2, 0.1 + 0.05 * i, Pattern::independent});
  }
  const Result result = draw_of(law, uses);
  REQUIRE(result.reckoned);

  std::vector<double> expected(12, 0.0);
  std::vector<int> n(12, 0);
  for (bool more = true; more;) {
    double p = 1, load = 0, asked = 0;
    int members = 0;
    for (std::size_t i = 0; i < 12; ++i) {
      const double share = uses[i].share;
      p *= n[i] == 0   ? (1 - share) * (1 - share)
           : n[i] == 1 ? 2 * share * (1 - share)
                       : share * share;
      load += n[i] * law.tasks[i].load_per_unit;
      asked += n[i] * law.tasks[i].each_w;
      if (law.tasks[i].group && n[i] > 0) ++members;
    }
    const double curve_w = load > 0 ? load_w(law, std::min(1.0, load)) : 0.0;
    asked += curve_w + (members > 0 ? 3 : 0);
    const double left = asked > 20 ? 20 / asked : 1;
    for (std::size_t i = 0; i < 12; ++i) {
      double part = n[i] * law.tasks[i].each_w;
      if (load > 0) part += curve_w * n[i] * law.tasks[i].load_per_unit / load;
      if (law.tasks[i].group && n[i] > 0) part += 3.0 / members;
      expected[i] += p * left * part;
    }
    more = false;
    for (std::size_t i = 0; i < 12 && !more; ++i) {
      more = ++n[i] <= 2;
      if (!more) n[i] = 0;
    }
  }
  for (std::size_t i = 0; i < 12; ++i) {
    CHECK(result.draw.task_w[i] == doctest::Approx(expected[i]).epsilon(1e-11));
  }
}

TEST_CASE("more than 2^20 merged outcomes are refused, not approximated") {
  DeviceLaw law;
  law.max_w = 1;
  std::vector<UseLaw> uses;
  for (int i = 0; i < 21; ++i) {
    law.tasks.push_back(watts_each(1e-3 * std::pow(2.0, i)));
    uses.push_back({1, 0.5});
  }
  CHECK_FALSE(draw_of(law, uses).reckoned);
  law.tasks.pop_back();
  uses.pop_back();
  CHECK(draw_of(law, uses).reckoned);  // 2^20 of them are still reckoned.
}
