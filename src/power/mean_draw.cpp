#include <algorithm>

#include "draw_inside.hpp"

namespace wattweek::power {

namespace {

// Up to here sums of watts are gone through one by one; more of them are merged.
constexpr std::size_t kMostSums = 256;

}  // namespace

bool DrawReckoner::Inside::reckon_mean(const DeviceLaw& law,
                                       const std::vector<const UnitsInUse*>& in_use,
                                       double& above_idle_w) {
  look_at(law, in_use);
  find_tracked();
  if (reaches_cap()) return mean_capped(above_idle_w);
  above_idle_w = mean_groups_w();
  for (std::size_t t = 0; t < law_->tasks.size(); ++t) {
    if (can_be_used(t)) above_idle_w += watts_apart(t);
  }
  return add_mean_loads(above_idle_w);
}

double DrawReckoner::Inside::mean_groups_w() const {
  double expected_w = 0;
  for (const std::size_t group : tracked_) {
    double none = 1;
    for (std::size_t t = 0; t < law_->tasks.size(); ++t) {
      if (can_be_used(t) && law_->tasks[t].group == group) none *= units(t).none();
    }
    expected_w += law_->group_w[group] * (1 - none);
  }
  return expected_w;
}

bool DrawReckoner::Inside::add_mean_loads(double& above_idle_w) {
  if (load_tasks_.empty()) return true;
  if (is_straight()) {
    for (const std::size_t t : load_tasks_) {
      above_idle_w += law_->full_load_w * law_->tasks[t].load_per_unit * units(t).mean;
    }
    return true;
  }
  if (!lattice_.start({}) || !add_load_tasks(false)) return false;
  for (std::size_t s = 0; s < lattice_.states(); ++s) {
    above_idle_w += lattice_.probability(s) * load_w(*law_, std::min(1.0, lattice_.amount(s)));
  }
  return true;
}

bool DrawReckoner::Inside::mean_capped(double& above_idle_w) {
  if (are_few_sums_of_watts()) {
    above_idle_w = mean_under_cap();
    return true;
  }
  if (!lattice_.start(tracked_members_) || !add_load_tasks(true)) return false;
  if (!add_capped_outcomes()) return false;
  const double most = law_->max_w - law_->idle_w;
  above_idle_w = 0;
  for (std::size_t s = 0; s < lattice_.states(); ++s) {
    above_idle_w += lattice_.probability(s) * std::min(most, asked_w(s));
  }
  return true;
}

// No loads, no groups to be counted, and few outcomes.
bool DrawReckoner::Inside::are_few_sums_of_watts() const {
  if (!tracked_.empty() || !load_tasks_.empty()) return false;
  std::size_t sums = 1;
  for (std::size_t t = 0; t < law_->tasks.size(); ++t) {
    sums *= units(t).units.size();
    if (sums > kMostSums) return false;
  }
  return true;
}

// What the tasks add, less what the cap takes away. Few outcomes reach it, and the greatest tasks
// come first so that most branches end at once.
double DrawReckoner::Inside::mean_under_cap() {
  double expected_w = 0;
  reaching_.clear();
  for (std::size_t t = 0; t < law_->tasks.size(); ++t) {
    if (!can_be_used(t)) continue;
    expected_w += watts_apart(t);
    const double most = increment_w(law_->tasks[t], units(t).most) + lone_group_w(t);
    const auto less = std::find_if(reaching_.begin(), reaching_.end(),
                                   [most](const Reaching& other) { return other.most_w < most; });
    reaching_.insert(less, {t, most});
  }
  return expected_w - above_cap(0, most_watts_, law_->max_w - law_->idle_w);
}

// Expected watts above the cap, of the tasks from `first` on; what those before add is taken off
// the cap already.
double DrawReckoner::Inside::above_cap(std::size_t first, double most_w, double cap_w) const {
  if (most_w <= cap_w) return 0;
  if (first == reaching_.size()) return -cap_w;
  const auto [task, task_most_w] = reaching_[first];
  const UnitsInUse& in_use = units(task);
  double expected_w = 0;
  for (std::size_t o = in_use.units.size(); o-- > 0;) {
    const double n = in_use.units[o];
    const double w = n > 0 ? increment_w(law_->tasks[task], n) + lone_group_w(task) : 0;
    if (most_w - task_most_w <= cap_w - w) break;  // And fewer units reach it no more.
    expected_w += in_use.probability[o] * above_cap(first + 1, most_w - task_most_w, cap_w - w);
  }
  return expected_w;
}

}  // namespace wattweek::power
