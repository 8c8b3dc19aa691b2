#pragma once
// How the tasks of one device hang together while each has so many units in use: by a cap that
// can be reached, by groups, by a curve that is not straight.

#include <cstddef>
#include <vector>

#include "wattweek/power/device_law.hpp"
#include "wattweek/power/units_in_use.hpp"

namespace wattweek::power {

class Ties {
 public:
  /// Both must outlive what is asked.
  void look_at(const DeviceLaw& law, const std::vector<const UnitsInUse*>& in_use);

  const DeviceLaw& law() const { return *law_; }
  bool is_load(std::size_t task) const { return law_->tasks[task].load_per_unit > 0; }
  bool can_be_used(std::size_t task) const { return (*in_use_)[task]->most > 0; }
  const UnitsInUse& units(std::size_t task) const { return *(*in_use_)[task]; }

  /// How many tasks of a group can be in use.
  std::size_t members(std::size_t group) const { return members_[group]; }
  bool has_loads() const { return !load_tasks_.empty(); }
  /// Loads on a straight line within full load need no outcomes.
  bool is_straight() const;
  bool reaches_cap() const { return law_->idle_w + most_watts_ > law_->max_w; }
  /// Above idle, before the cap.
  double most_watts() const { return most_watts_; }
  double most_load() const { return most_load_; }

 protected:
  const DeviceLaw* law_ = nullptr;
  const std::vector<const UnitsInUse*>* in_use_ = nullptr;
  std::vector<std::size_t> members_;     // By group: tasks that can be in use.
  std::vector<char> has_load_member_;    // By group.
  std::vector<std::size_t> load_tasks_;  // That can be in use.
  double most_watts_ = 0;                // Above idle, before the cap.
  double most_load_ = 0;

 private:
  void find_members();
  void find_extremes();
};

}  // namespace wattweek::power
