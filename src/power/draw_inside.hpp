#pragma once
// The inside of the reckoner of draws, which two files share: draw.cpp says who draws what,
// mean_draw.cpp the mean alone.

#include <cstdint>
#include <vector>

#include "grid.hpp"
#include "lattice.hpp"
#include "ties.hpp"
#include "wattweek/power/draw.hpp"

namespace wattweek::power {

class DrawReckoner::Inside : private Ties {
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

  double watts_apart(std::size_t task) const;
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

  void find_tracked();

  Lattice lattice_;
  std::vector<TaskOutcome> outcomes_;
  std::vector<std::size_t> tracked_;          // Groups whose members are counted ...
  std::vector<std::size_t> tracked_members_;  // ... and how many there are.
  std::vector<std::size_t> added_;            // To the lattice, after the loads.
  std::vector<Reaching> reaching_;            // That can be in use, the greatest first.
};

}  // namespace wattweek::power
