#pragma once
// The inside of the reckoner of draws, which two files share: draw.cpp says who draws what,
// mean_draw.cpp the mean alone.

#include <cstdint>
#include <vector>

#include "grid.hpp"
#include "lattice.hpp"
#include "wattweek/power/draw.hpp"

namespace wattweek::power {

// How the tasks of a situation hang together.
class DrawReckoner::Inside {
 public:
  bool reckon(const DeviceLaw& law, const std::vector<const UnitsInUse*>& in_use, Draw& draw);
  bool reckon_mean(const DeviceLaw& law, const std::vector<const UnitsInUse*>& in_use,
                   double& above_idle_w);
  std::uint64_t outcomes_formed() const { return lattice_.formed(); }

 private:
  struct Reaching {
    std::size_t task;
    double most_w;
  };

  bool is_load(std::size_t task) const { return law_->tasks[task].load_per_unit > 0; }
  bool can_be_used(std::size_t task) const { return (*in_use_)[task]->most > 0; }
  const UnitsInUse& units(std::size_t task) const { return *(*in_use_)[task]; }

  void find_members();
  void find_extremes();
  double watts_apart(std::size_t task) const;
  bool is_straight() const;
  double lone_group_w(std::size_t task) const;
  std::size_t tracked_group(std::size_t task) const;

  void add_watts_apart(Draw& draw) const;
  bool add_loads(Draw& draw);
  bool add_groups(Draw& draw);
  bool add_capped(Draw& draw);

  void fill_outcomes(std::size_t task, const Grid& grid);
  bool add_load_tasks(bool with_groups);
  double overload_probability() const;
  void share_back_loads(Draw& draw);
  bool add_capped_outcomes();
  double asked_w(std::size_t state) const;
  void set_worth_under_cap();

  double mean_groups_w() const;
  bool add_mean_loads(double& above_idle_w);
  bool mean_capped(double& above_idle_w);
  bool are_few_sums_of_watts() const;
  double mean_under_cap();
  double above_cap(std::size_t first, double most_w, double cap_w) const;

  const DeviceLaw* law_ = nullptr;
  const std::vector<const UnitsInUse*>* in_use_ = nullptr;
  Lattice lattice_;
  std::vector<TaskOutcome> outcomes_;
  std::vector<std::size_t> members_;          // By group: tasks that can be in use.
  std::vector<char> has_load_member_;         // By group.
  std::vector<std::size_t> tracked_;          // Groups whose members are counted ...
  std::vector<std::size_t> tracked_members_;  // ... and how many there are.
  std::vector<std::size_t> load_tasks_;       // That can be in use.
  std::vector<std::size_t> added_;            // To the lattice, after the loads.
  std::vector<Reaching> reaching_;            // That can be in use, the greatest first.
  double most_watts_ = 0;                     // Above idle, before the cap.
  double most_load_ = 0;
};

}  // namespace wattweek::power
