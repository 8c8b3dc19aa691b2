#include "wattweek/power/draw.hpp"

#include <algorithm>

#include "draw_inside.hpp"

namespace wattweek::power {

namespace {

// A load above 1 by more than this is an overload.
constexpr double kOverload = 1e-9;

}  // namespace

DrawReckoner::DrawReckoner() : inside_(std::make_unique<Inside>()) {}
DrawReckoner::~DrawReckoner() = default;

bool DrawReckoner::reckon(const DeviceLaw& law, const std::vector<const UnitsInUse*>& in_use,
                          Draw& draw) {
  return inside_->reckon(law, in_use, draw);
}

bool DrawReckoner::reckon_mean(const DeviceLaw& law, const std::vector<const UnitsInUse*>& in_use,
                               double& above_idle_w) {
  return inside_->reckon_mean(law, in_use, above_idle_w);
}

std::uint64_t DrawReckoner::outcomes_formed() const { return inside_->outcomes_formed(); }

bool DrawReckoner::Inside::reckon(const DeviceLaw& law,
                                  const std::vector<const UnitsInUse*>& in_use, Draw& draw) {
  look_at(law, in_use);
  find_tracked();
  draw.task_w.assign(law_->tasks.size(), 0.0);
  draw.overload = 0;
  double none = 1;
  for (const UnitsInUse* units : in_use) none *= units->none();
  draw.active = 1 - none;
  draw.highest_w = std::min(law_->max_w, law_->idle_w + most_watts_);
  if (reaches_cap()) return add_capped(draw);
  add_watts_apart(draw);
  return add_groups(draw) && add_loads(draw);
}

void DrawReckoner::Inside::find_tracked() {
  tracked_.clear();
  tracked_members_.clear();
  for (std::size_t g = 0; g < members_.size(); ++g) {
    // A lone member's group is part of its watts, but not of a load, which has another unit.
    if (members_[g] < 2 && has_load_member_[g] == 0) continue;
    tracked_.push_back(g);
    tracked_members_.push_back(members_[g]);
  }
}

// A group that only one task can switch on is part of the watts that this task adds.
double DrawReckoner::Inside::lone_group_w(std::size_t task) const {
  const auto& group = law_->tasks[task].group;
  return group && members_[*group] == 1 && !is_load(task) ? law_->group_w[*group] : 0.0;
}

std::size_t DrawReckoner::Inside::tracked_group(std::size_t task) const {
  const auto& group = law_->tasks[task].group;
  if (!group) return kNoGroup;
  const auto at = std::find(tracked_.begin(), tracked_.end(), *group);
  return at == tracked_.end() ? kNoGroup : static_cast<std::size_t>(at - tracked_.begin());
}

// Without a cap in reach the expectations of watt increments simply add.
double DrawReckoner::Inside::watts_apart(std::size_t task) const {
  const TaskLaw& law = law_->tasks[task];
  double expected_w = lone_group_w(task) * units(task).any();
  if (law.table_w.empty() && law.first_w == law.each_w) {
    return expected_w + law.each_w * units(task).mean;
  }
  for (std::size_t o = 0; o < units(task).units.size(); ++o) {
    expected_w += units(task).probability[o] * increment_w(law, units(task).units[o]);
  }
  return expected_w;
}

void DrawReckoner::Inside::add_watts_apart(Draw& draw) const {
  for (std::size_t t = 0; t < law_->tasks.size(); ++t) {
    if (can_be_used(t)) draw.task_w[t] = watts_apart(t);
  }
}

// Each group by itself: only how many members are in use matters.
bool DrawReckoner::Inside::add_groups(Draw& draw) {
  for (std::size_t i = 0; i < tracked_.size(); ++i) {
    const std::size_t group = tracked_[i];
    if (!lattice_.start({tracked_members_[i]})) return false;
    added_.clear();
    for (std::size_t t = 0; t < law_->tasks.size(); ++t) {
      if (!can_be_used(t) || law_->tasks[t].group != group) continue;
      // The amount is the member itself, so that the states are the numbers in use.
      outcomes_.clear();
      if (units(t).none() > 0) outcomes_.push_back({units(t).none(), 0.0, 0, 0.0});
      if (units(t).any() > 0) outcomes_.push_back({units(t).any(), 0.0, 0, 1.0});
      if (!lattice_.add(outcomes_, 0)) return false;
      added_.push_back(t);
    }
    lattice_.prepare_worth();
    for (std::size_t s = 0; s < lattice_.states(); ++s) {
      const std::size_t in_use = lattice_.in_use(s, 0);
      if (in_use > 0) lattice_.worth(1, s) = law_->group_w[group] / static_cast<double>(in_use);
    }
    for (auto t = added_.rbegin(); t != added_.rend(); ++t) draw.task_w[*t] += lattice_.go_back();
  }
  return true;
}

void DrawReckoner::Inside::fill_outcomes(std::size_t task, const Grid& grid) {
  const TaskLaw& law = law_->tasks[task];
  const double lone = lone_group_w(task);
  outcomes_.clear();
  for (std::size_t o = 0; o < units(task).units.size(); ++o) {
    const double n = units(task).units[o];
    TaskOutcome outcome{units(task).probability[o], 0, 0, n > 0 ? 1.0 : 0.0};
    if (is_load(task)) {
      outcome.amount = n * law.load_per_unit;
      outcome.key = key_of_multiple(grid, law.load_per_unit, n);
    } else if (n > 0) {
      outcome.amount = increment_w(law, n) + lone;
      outcome.key = key_of_increment(grid, law, n) + grid(lone);
    }
    outcomes_.push_back(outcome);
  }
}

bool DrawReckoner::Inside::add_load_tasks(bool with_groups) {
  const Grid grid(kStepsPerLoad, most_load_);
  for (const std::size_t t : load_tasks_) {
    fill_outcomes(t, grid);
    if (!lattice_.add(outcomes_, with_groups ? tracked_group(t) : kNoGroup)) return false;
  }
  return true;
}

double DrawReckoner::Inside::overload_probability() const {
  if (most_load_ <= 1 + kOverload) return 0;
  double probability = 0;
  for (std::size_t s = 0; s < lattice_.states(); ++s) {
    if (lattice_.amount(s) > 1 + kOverload) probability += lattice_.probability(s);
  }
  return std::min(1.0, probability);
}

void DrawReckoner::Inside::share_back_loads(Draw& draw) {
  for (auto t = load_tasks_.rbegin(); t != load_tasks_.rend(); ++t) {
    draw.task_w[*t] += lattice_.go_back();
  }
}

// Loads alone, without a cap in reach.
bool DrawReckoner::Inside::add_loads(Draw& draw) {
  if (load_tasks_.empty()) return true;
  if (is_straight()) {
    for (const std::size_t t : load_tasks_) {
      draw.task_w[t] += law_->full_load_w * law_->tasks[t].load_per_unit * units(t).mean;
    }
    return true;
  }
  if (!lattice_.start({}) || !add_load_tasks(false)) return false;
  draw.overload = overload_probability();
  lattice_.prepare_worth();
  for (std::size_t s = 0; s < lattice_.states(); ++s) {
    const double load = lattice_.amount(s);
    if (load > 0) lattice_.worth(kAmountChannel, s) = load_w(*law_, std::min(1.0, load)) / load;
  }
  share_back_loads(draw);
  return true;
}

// The watts above idle that a final state asks for, before the cap.
double DrawReckoner::Inside::asked_w(std::size_t state) const {
  double asked = lattice_.amount(state);
  for (std::size_t i = 0; i < tracked_.size(); ++i) {
    if (lattice_.in_use(state, i) > 0) asked += law_->group_w[tracked_[i]];
  }
  return asked;
}

// In each final state the watts that the cap leaves, as a fraction of what was asked for, and
// each group's watts divided among its members in use.
void DrawReckoner::Inside::set_worth_under_cap() {
  const double most = law_->max_w - law_->idle_w;
  lattice_.prepare_worth();
  for (std::size_t s = 0; s < lattice_.states(); ++s) {
    const double asked = asked_w(s);
    const double left = asked > most ? most / asked : 1.0;
    lattice_.worth(kAmountChannel, s) = left;
    for (std::size_t i = 0; i < tracked_.size(); ++i) {
      const auto in_use = static_cast<double>(lattice_.in_use(s, i));
      if (in_use > 0) lattice_.worth(1 + i, s) = left * law_->group_w[tracked_[i]] / in_use;
    }
  }
}

// Everything together: first the loads, whose sum the curve turns into watts, then the watts.
bool DrawReckoner::Inside::add_capped(Draw& draw) {
  if (!lattice_.start(tracked_members_) || !add_load_tasks(true)) return false;
  draw.overload = overload_probability();
  if (!add_capped_outcomes()) return false;
  set_worth_under_cap();
  for (auto t = added_.rbegin(); t != added_.rend(); ++t) draw.task_w[*t] += lattice_.go_back();
  if (load_tasks_.empty()) return true;
  lattice_.go_back_transform(
      [](double load, double watts) { return load > 0 ? watts / load : 0.0; });
  share_back_loads(draw);
  return true;
}

// On the loads: the curve turns their sum into watts, and the watts of all others are added.
bool DrawReckoner::Inside::add_capped_outcomes() {
  const Grid grid(kStepsPerWatt, most_watts_);
  if (!load_tasks_.empty()) {
    lattice_.transform([this](double load) { return load_w(*law_, std::min(1.0, load)); }, grid);
  }
  added_.clear();
  for (std::size_t t = 0; t < law_->tasks.size(); ++t) {
    if (!can_be_used(t) || is_load(t)) continue;
    fill_outcomes(t, grid);
    if (!lattice_.add(outcomes_, tracked_group(t))) return false;
    added_.push_back(t);
  }
  return true;
}

}  // namespace wattweek::power
