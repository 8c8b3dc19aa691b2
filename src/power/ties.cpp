#include "ties.hpp"

#include <algorithm>

namespace wattweek::power {

void Ties::look_at(const DeviceLaw& law, const std::vector<const UnitsInUse*>& in_use) {
  law_ = &law;
  in_use_ = &in_use;
  find_members();
  find_extremes();
}

void Ties::find_members() {
  members_.assign(law_->group_w.size(), 0);
  has_load_member_.assign(law_->group_w.size(), 0);
  load_tasks_.clear();
  for (std::size_t t = 0; t < law_->tasks.size(); ++t) {
    if (!can_be_used(t)) continue;
    if (is_load(t)) load_tasks_.push_back(t);
    if (!law_->tasks[t].group) continue;
    ++members_[*law_->tasks[t].group];
    if (is_load(t)) has_load_member_[*law_->tasks[t].group] = 1;
  }
}

// Increments, groups and curve never fall, so the most is drawn where all units are in use.
void Ties::find_extremes() {
  most_watts_ = 0;
  most_load_ = 0;
  for (std::size_t t = 0; t < law_->tasks.size(); ++t) {
    if (!can_be_used(t)) continue;
    most_watts_ += increment_w(law_->tasks[t], units(t).most);
    most_load_ += law_->tasks[t].load_per_unit * units(t).most;
  }
  for (std::size_t g = 0; g < members_.size(); ++g) {
    if (members_[g] > 0) most_watts_ += law_->group_w[g];
  }
  if (most_load_ > 0) most_watts_ += load_w(*law_, std::min(1.0, most_load_));
}

bool Ties::is_straight() const {
  return law_->at_load_w.empty() && law_->curve == model::Curve::linear && most_load_ <= 1;
}

}  // namespace wattweek::power
