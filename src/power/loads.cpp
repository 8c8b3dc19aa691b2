#include "wattweek/power/loads.hpp"

#include <algorithm>
#include <utility>

#include "grid.hpp"
#include "joint_states.hpp"
#include "ties.hpp"

namespace wattweek::power {

namespace {

// Groups of one device that a set of bits can hold.
constexpr std::size_t kMostShared = 62;

// A device, and where its open figures stand in the joint states.
struct Open {
  Ties ties;
  std::size_t count = 1;
  bool coupled = false;
  bool done = false;
  std::size_t waits_for = 0;  // Workloads that are not counted in yet.
  std::size_t watts_column = 0;
  std::size_t load_column = 0;  // 0: its loads are watts, on a straight line.
  std::size_t set_column = 0;
  std::vector<std::size_t> shared;  // Groups of several members: one bit each.
};

bool bends(const Ties& ties) { return ties.has_loads() && !ties.is_straight(); }

// A workload's task on one of the devices.
struct Part {
  std::size_t device;
  std::size_t task;
};

}  // namespace

class LoadReckoner::Inside {
 public:
  bool reckon(const std::vector<DeviceOn>& devices, std::vector<Load>& loads);

 private:
  void look_at(const std::vector<DeviceOn>& devices);
  void find_ties(Open& open) const;
  void find_parts();
  std::vector<std::size_t> component_of(std::size_t device) const;
  bool shares_workload(std::size_t a, std::size_t b) const;
  void place_columns(const std::vector<std::size_t>& component);
  bool add_component(const std::vector<std::size_t>& component);
  bool count_in(std::size_t workload, JointStates& states);
  void fill_outcomes(std::size_t workload);
  void add_part(const Part& part, double units, std::vector<Addend>& adds) const;
  void close(Open& open);
  Addend drawn_w(const Open& open, const Addend* row) const;

  std::size_t left_ = kMostLoadOutcomes;
  std::vector<Open> open_;
  std::vector<std::vector<Part>> parts_;  // By workload; empty where nothing is in use.
  Grid watts_{kStepsPerWatt, 1};
  Grid loads_{kStepsPerLoad, 1};
  std::size_t columns_ = 1;
  JointStates total_;
  JointStates joint_;
  std::vector<JointOutcome> outcomes_;
};

bool LoadReckoner::Inside::reckon(const std::vector<DeviceOn>& devices, std::vector<Load>& loads) {
  look_at(devices);
  total_.start(1, 1);
  for (std::size_t d = 0; d < open_.size(); ++d) {
    if (open_[d].shared.size() > kMostShared) return false;
    if (open_[d].coupled && !open_[d].done && !add_component(component_of(d))) return false;
  }
  columns_ = 1;
  for (std::size_t w = 0; w < parts_.size(); ++w) {
    if (!parts_[w].empty() && !count_in(w, total_)) return false;
  }
  loads.clear();
  for (std::size_t s = 0; s < total_.size(); ++s) {
    if (total_.probability(s) <= 0) continue;
    loads.push_back({total_.settled(s).amount, total_.probability(s)});
  }
  return true;
}

void LoadReckoner::Inside::look_at(const std::vector<DeviceOn>& devices) {
  open_.assign(devices.size(), {});
  double most_w = 0;
  double most_load = 0;
  for (std::size_t d = 0; d < devices.size(); ++d) {
    open_[d].ties.look_at(*devices[d].law, devices[d].in_use);
    find_ties(open_[d]);
    most_w += devices[d].law->count * open_[d].ties.most_watts();
    most_load = std::max(most_load, open_[d].ties.most_load());
  }
  watts_ = Grid(kStepsPerWatt, most_w);
  loads_ = Grid(kStepsPerLoad, most_load);
  find_parts();
}

void LoadReckoner::Inside::find_ties(Open& open) const {
  const Ties& ties = open.ties;
  open.count = static_cast<std::size_t>(ties.law().count);
  for (std::size_t g = 0; g < ties.law().group_w.size(); ++g) {
    if (ties.members(g) > 1) open.shared.push_back(g);
  }
  open.coupled = ties.reaches_cap() || bends(ties) || !open.shared.empty();
}

void LoadReckoner::Inside::find_parts() {
  parts_.clear();
  for (std::size_t d = 0; d < open_.size(); ++d) {
    const std::vector<TaskLaw>& tasks = open_[d].ties.law().tasks;
    for (std::size_t t = 0; t < tasks.size(); ++t) {
      if (!open_[d].ties.can_be_used(t)) continue;
      if (parts_.size() <= tasks[t].workload) parts_.resize(tasks[t].workload + 1);
      parts_[tasks[t].workload].push_back({d, t});
      ++open_[d].waits_for;
    }
  }
}

bool LoadReckoner::Inside::shares_workload(std::size_t a, std::size_t b) const {
  return std::any_of(parts_.begin(), parts_.end(), [a, b](const std::vector<Part>& parts) {
    const auto is_on = [&parts](std::size_t device) {
      return std::any_of(parts.begin(), parts.end(),
                         [device](const Part& part) { return part.device == device; });
    };
    return is_on(a) && is_on(b);
  });
}

// The coupled devices that hang together with this one by workloads they share.
std::vector<std::size_t> LoadReckoner::Inside::component_of(std::size_t device) const {
  std::vector<std::size_t> component{device};
  for (std::size_t i = 0; i < component.size(); ++i) {
    for (std::size_t d = 0; d < open_.size(); ++d) {
      if (!open_[d].coupled || !shares_workload(component[i], d)) continue;
      if (std::find(component.begin(), component.end(), d) == component.end()) {
        component.push_back(d);
      }
    }
  }
  return component;
}

// Sums first, then sets.
void LoadReckoner::Inside::place_columns(const std::vector<std::size_t>& component) {
  columns_ = 1;
  for (const std::size_t d : component) {
    open_[d].watts_column = columns_++;
    if (bends(open_[d].ties)) open_[d].load_column = columns_++;
  }
  const std::size_t sets_from = columns_;
  for (const std::size_t d : component) {
    if (!open_[d].shared.empty()) open_[d].set_column = columns_++;
  }
  joint_.start(columns_, sets_from);
}

bool LoadReckoner::Inside::add_component(const std::vector<std::size_t>& component) {
  place_columns(component);
  for (const std::size_t d : component) {
    for (std::size_t w = 0; w < parts_.size(); ++w) {
      const bool is_on = std::any_of(parts_[w].begin(), parts_[w].end(),
                                     [d](const Part& part) { return part.device == d; });
      if (is_on && !count_in(w, joint_)) return false;
    }
  }
  std::vector<JointOutcome> settled;
  for (std::size_t s = 0; s < joint_.size(); ++s) {
    settled.push_back({joint_.probability(s), {joint_.settled(s)}});
  }
  return total_.add(settled, left_);
}

// A workload is counted in once; a device that waited for it alone is closed.
bool LoadReckoner::Inside::count_in(std::size_t workload, JointStates& states) {
  fill_outcomes(workload);
  if (!states.add(outcomes_, left_)) return false;
  const std::vector<Part> parts = std::exchange(parts_[workload], {});
  for (const Part& part : parts) {
    Open& open = open_[part.device];
    if (--open.waits_for == 0 && open.coupled) close(open);
  }
  return true;
}

void LoadReckoner::Inside::fill_outcomes(std::size_t workload) {
  const Part& first = parts_[workload].front();
  const UnitsInUse& units = open_[first.device].ties.units(first.task);
  outcomes_.resize(units.units.size());
  for (std::size_t o = 0; o < outcomes_.size(); ++o) {
    outcomes_[o].probability = units.probability[o];
    outcomes_[o].adds.assign(columns_, {});
    if (units.units[o] <= 0) continue;
    for (const Part& part : parts_[workload]) add_part(part, units.units[o], outcomes_[o].adds);
  }
}

// What so many units add on one device, more than none of them.
void LoadReckoner::Inside::add_part(const Part& part, double units,
                                    std::vector<Addend>& adds) const {
  const Open& open = open_[part.device];
  const DeviceLaw& law = open.ties.law();
  const TaskLaw& task = law.tasks[part.task];
  Addend watts{increment_w(task, units), key_of_increment(watts_, task, units)};
  if (open.load_column > 0) {
    adds[open.load_column].amount += task.load_per_unit * units;
    adds[open.load_column].key += key_of_multiple(loads_, task.load_per_unit, units);
  } else if (open.ties.is_load(part.task)) {
    const double each_w = law.full_load_w * task.load_per_unit;
    watts.amount += each_w * units;
    watts.key += key_of_multiple(watts_, each_w, units);
  }
  if (task.group && open.ties.members(*task.group) == 1) {
    watts.amount += law.group_w[*task.group];
    watts.key += watts_(law.group_w[*task.group]);
  } else if (task.group) {
    const auto at = std::find(open.shared.begin(), open.shared.end(), *task.group);
    adds[open.set_column].key |= std::int64_t{1} << (at - open.shared.begin());
  }
  // What is not coupled goes straight to the sum, all copies of it.
  const auto copies = static_cast<std::int64_t>(open.coupled ? 1 : open.count);
  adds[open.watts_column].amount += static_cast<double>(copies) * watts.amount;
  adds[open.watts_column].key += copies * watts.key;
}

// All its workloads are counted in: what it draws is settled.
void LoadReckoner::Inside::close(Open& open) {
  open.done = true;
  joint_.change([&](Addend* row) {
    const Addend watts = drawn_w(open, row);
    row[0].amount += static_cast<double>(open.count) * watts.amount;
    row[0].key += static_cast<std::int64_t>(open.count) * watts.key;
    row[open.watts_column] = {};
    if (open.load_column > 0) row[open.load_column] = {};
    if (open.set_column > 0) row[open.set_column] = {};
  });
}

// One copy's watts above idle, after the cap.
Addend LoadReckoner::Inside::drawn_w(const Open& open, const Addend* row) const {
  const DeviceLaw& law = open.ties.law();
  Addend watts = row[open.watts_column];
  if (open.load_column > 0) {
    const double load = load_w(law, std::min(1.0, row[open.load_column].amount));
    watts.amount += load;
    watts.key += watts_(load);
  }
  for (std::size_t i = 0; i < open.shared.size(); ++i) {
    if ((row[open.set_column].key >> i & 1) == 0) continue;
    watts.amount += law.group_w[open.shared[i]];
    watts.key += watts_(law.group_w[open.shared[i]]);
  }
  const double most_w = law.max_w - law.idle_w;
  return watts.amount > most_w ? Addend{most_w, watts_(most_w)} : watts;
}

LoadReckoner::LoadReckoner() : inside_(std::make_unique<Inside>()) {}
LoadReckoner::~LoadReckoner() = default;

bool LoadReckoner::reckon(const std::vector<DeviceOn>& devices, std::vector<Load>& loads) {
  return inside_->reckon(devices, loads);
}

}  // namespace wattweek::power
