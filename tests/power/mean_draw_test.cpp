// The mean alone, held against the sum of what each task draws, over laws of chance.

#include <doctest/doctest.h>

#include <numeric>
#include <random>
#include <sstream>

#include "wattweek/power/draw.hpp"

using namespace wattweek::power;
using wattweek::model::Curve;
using wattweek::model::Pattern;

namespace {

/// What chance has left out is told apart by these.
struct Shape {
  bool capped = false;
  bool overloaded = false;
  bool shares_a_group = false;
  bool load_in_group = false;
};

class Chance {
 public:
  explicit Chance(std::uint64_t seed) : engine_(seed) {}

  std::size_t below(std::size_t sides) { return static_cast<std::size_t>(engine_() % sides); }
  bool one_in(std::size_t sides) { return below(sides) == 0; }
  double between(double low, double high) {
    return low + (high - low) * static_cast<double>(engine_() >> 11U) * 0x1p-53;
  }

 private:
  std::mt19937_64 engine_;
};

struct Machine {
  DeviceLaw law;
  std::vector<UnitsInUse> units;  ///< By task.
};

std::vector<double> rising(Chance& chance, std::size_t size) {
  std::vector<double> values;
  double value = chance.between(0, 5);
  for (std::size_t i = 0; i < size; ++i) {
    values.push_back(value);
    if (!chance.one_in(5)) value += chance.between(0, 9);
  }
  return values;
}

TaskLaw random_task(Chance& chance, std::size_t workload, std::size_t groups) {
  TaskLaw task;
  task.workload = workload;
  switch (chance.below(5)) {
    case 0:
      task.first_w = task.each_w = chance.between(0, 12);
      break;
    case 1:
      task.first_w = chance.between(0, 12);
      task.each_w = chance.between(0, 6);
      break;
    case 2:
      task.table_w = rising(chance, 1 + chance.below(5));
      break;
    case 3:
      task.load_per_unit = chance.between(0.01, 0.4);
      break;
    default:  // Nothing of its own: a group alone.
      break;
  }
  if (groups > 0 && !chance.one_in(3)) task.group = chance.below(groups);
  return task;
}

std::vector<UseLaw> random_uses(Chance& chance) {
  std::vector<UseLaw> uses;
  for (std::size_t u = 1 + chance.below(3); u > 0; --u) {
    UseLaw use;
    if (chance.one_in(2)) {
      use.pattern = Pattern::independent;
      use.units = static_cast<double>(chance.below(6));
    } else {
      use.units =
          chance.one_in(3) ? chance.between(0, 4) : 1 + static_cast<double>(chance.below(3));
    }
    use.share = chance.one_in(8) ? 0 : chance.one_in(6) ? 1 : chance.between(0, 1);
    uses.push_back(use);
  }
  return uses;
}

Machine random_machine(std::uint64_t seed) {
  Chance chance(seed);
  Machine machine;
  DeviceLaw& law = machine.law;
  law.idle_w = chance.between(0, 80);
  for (std::size_t g = chance.below(4); g > 0; --g) law.group_w.push_back(chance.between(0, 20));
  if (chance.one_in(3)) law.at_load_w = rising(chance, 2 + chance.below(8));
  if (!law.at_load_w.empty()) {
    const double first = law.at_load_w.front();
    for (double& watts : law.at_load_w) watts -= first;
  }
  law.curve = chance.one_in(2) ? Curve::linear : Curve::concave;
  law.full_load_w = chance.between(0, 150);
  if (!chance.one_in(3)) law.max_w = law.idle_w + chance.between(0, 80);
  for (std::size_t w = 0, tasks = 1 + chance.below(5); w < tasks; ++w) {
    law.tasks.push_back(random_task(chance, w, law.group_w.size()));
    REQUIRE(units_in_use(random_uses(chance), machine.units.emplace_back()));
  }
  return machine;
}

std::string words(const Machine& machine) {
  std::ostringstream out;
  const DeviceLaw& law = machine.law;
  out << "idle " << law.idle_w << " max " << law.max_w << " full " << law.full_load_w << " table "
      << law.at_load_w.size() << " groups " << law.group_w.size();
  for (std::size_t t = 0; t < law.tasks.size(); ++t) {
    out << "\n task: first " << law.tasks[t].first_w << " each " << law.tasks[t].each_w << " table "
        << law.tasks[t].table_w.size() << " load " << law.tasks[t].load_per_unit << " group "
        << (law.tasks[t].group ? static_cast<int>(*law.tasks[t].group) : -1) << ", "
        << machine.units[t].units.size() << " outcomes";
  }
  return out.str();
}

Shape shape_of(const Machine& machine, const Draw& draw) {
  Shape shape;
  shape.capped = draw.highest_w == machine.law.max_w;
  shape.overloaded = draw.overload > 0;
  for (std::size_t t = 0; t < machine.law.tasks.size(); ++t) {
    const TaskLaw& task = machine.law.tasks[t];
    if (!task.group || machine.units[t].most <= 0) continue;
    if (task.load_per_unit > 0) shape.load_in_group = true;
    for (std::size_t other = 0; other < t; ++other) {
      if (machine.units[other].most > 0 && machine.law.tasks[other].group == task.group) {
        shape.shares_a_group = true;
      }
    }
  }
  return shape;
}

}  // namespace

TEST_CASE("the mean alone is the sum of what the tasks draw, whatever the law") {
  DrawReckoner whole;
  DrawReckoner mean;  // One for all laws: what it keeps must not show.
  int capped = 0;
  int overloaded = 0;
  int shared = 0;
  int loads_in_groups = 0;
  for (std::uint64_t seed = 1; seed <= 1500; ++seed) {
    const Machine machine = random_machine(seed);
    std::vector<const UnitsInUse*> in_use;
    for (const UnitsInUse& units : machine.units) in_use.push_back(&units);
    Draw draw;
    double above_idle_w = -1;
    REQUIRE(whole.reckon(machine.law, in_use, draw));
    REQUIRE(mean.reckon_mean(machine.law, in_use, above_idle_w));
    const double sum = std::accumulate(draw.task_w.begin(), draw.task_w.end(), 0.0);
    const bool agree = std::abs(above_idle_w - sum) <= 1e-12 * std::abs(sum);
    CHECK_MESSAGE(agree, "seed ", seed, ": ", above_idle_w, " for ", sum, "\n", words(machine));
    const Shape shape = shape_of(machine, draw);
    capped += shape.capped ? 1 : 0;
    overloaded += shape.overloaded ? 1 : 0;
    shared += shape.shares_a_group ? 1 : 0;
    loads_in_groups += shape.load_in_group ? 1 : 0;
  }
  // Chance has not passed over what is hard.
  CHECK(capped > 200);
  CHECK(overloaded > 100);
  CHECK(shared > 200);
  CHECK(loads_in_groups > 100);
}

TEST_CASE("one reckoner gives the mean and the whole in turn") {
  DrawReckoner reckoner;
  DrawReckoner fresh;
  for (std::uint64_t seed = 1; seed <= 60; ++seed) {
    const Machine machine = random_machine(seed);
    std::vector<const UnitsInUse*> in_use;
    for (const UnitsInUse& units : machine.units) in_use.push_back(&units);
    Draw draw;
    Draw draw_of_fresh;
    double mean_w = 0;
    double mean_w_again = 0;
    REQUIRE(reckoner.reckon_mean(machine.law, in_use, mean_w));
    REQUIRE(reckoner.reckon(machine.law, in_use, draw));
    REQUIRE(reckoner.reckon_mean(machine.law, in_use, mean_w_again));
    REQUIRE(fresh.reckon(machine.law, in_use, draw_of_fresh));
    CHECK(mean_w == mean_w_again);
    CHECK(draw.task_w == draw_of_fresh.task_w);
  }
}

TEST_CASE("a machine that nobody uses, and one without tasks, draw nothing above idle") {
  DrawReckoner reckoner;
  DeviceLaw law;
  law.idle_w = 10;
  law.max_w = 10;
  double above_idle_w = -1;
  REQUIRE(reckoner.reckon_mean(law, {}, above_idle_w));
  CHECK(above_idle_w == 0);
  law.tasks.emplace_back();
  law.tasks[0].first_w = law.tasks[0].each_w = 5;
  const UnitsInUse none = units_in_use(UseLaw{3, 0});
  REQUIRE(reckoner.reckon_mean(law, {&none}, above_idle_w));
  CHECK(above_idle_w == 0);
  const UnitsInUse three = units_in_use(UseLaw{3, 1});
  REQUIRE(reckoner.reckon_mean(law, {&three}, above_idle_w));
  CHECK(above_idle_w == 0);  // Capped at idle.
}

TEST_CASE("the mean refuses the outcomes that the whole refuses") {
  // 60 units each of four workloads, in steps that share no multiple: 61^4 sums under a cap.
  DeviceLaw law;
  law.max_w = 50;
  const UnitsInUse units = units_in_use(UseLaw{60, 0.5, Pattern::independent});
  std::vector<const UnitsInUse*> in_use;
  for (const double each_w : {1.0, 1.4142135, 1.7320508, 2.2360679}) {
    law.tasks.emplace_back();
    law.tasks.back().first_w = law.tasks.back().each_w = each_w;
    in_use.push_back(&units);
  }
  DrawReckoner reckoner;
  Draw draw;
  double above_idle_w = 0;
  CHECK_FALSE(reckoner.reckon(law, in_use, draw));
  CHECK_FALSE(reckoner.reckon_mean(law, in_use, above_idle_w));
  law.max_w = 1e6;  // Never reached: nothing is coupled, and nothing is refused.
  REQUIRE(reckoner.reckon_mean(law, in_use, above_idle_w));
  CHECK(above_idle_w == doctest::Approx(30 * (1.0 + 1.4142135 + 1.7320508 + 2.2360679)));
}
