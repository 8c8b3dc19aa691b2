#include <algorithm>

#include "draw_inside.hpp"

namespace wattweek::power {

bool DrawReckoner::Inside::reckon_mean(const DeviceLaw& law,
                                       const std::vector<const UnitsInUse*>& in_use,
                                       double& above_idle_w) {
  law_ = &law;
  in_use_ = &in_use;
  find_members();
  find_extremes();
  if (law_->idle_w + most_watts_ > law_->max_w) return mean_capped(above_idle_w);
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
  if (!lattice_.start(tracked_members_) || !add_load_tasks(true)) return false;
  if (!add_capped_outcomes()) return false;
  const double most = law_->max_w - law_->idle_w;
  above_idle_w = 0;
  for (std::size_t s = 0; s < lattice_.states(); ++s) {
    above_idle_w += lattice_.probability(s) * std::min(most, asked_w(s));
  }
  return true;
}

}  // namespace wattweek::power
