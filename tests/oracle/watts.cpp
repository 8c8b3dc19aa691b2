#include "watts.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace wattweek::oracle {
namespace {

// One thing that may happen: how many units of each workload are in use, and how probable.
struct Outcome {
  double probability = 1;
  std::vector<double> units;  // By workload.
};

// What a device does in one outcome; watts of one copy.
struct Draw {
  State state = kIdle;
  double watts = 0;
  double base_w = 0;
  std::vector<double> workload_w;
  bool overload = false;
};

double binomial(int n, int k) {
  double ways = 1;
  for (int i = 1; i <= k; ++i) ways = ways * (n - k + i) / i;
  return ways;
}

// R2: the distribution of one use's units.
std::vector<std::pair<double, double>> units_of(const model::Use& use) {
  const double share = use.share.central();
  if (use.pattern == model::Pattern::together) return {{share, use.units}, {1 - share, 0.0}};
  std::vector<std::pair<double, double>> all;
  const int n = static_cast<int>(use.units);
  for (int k = 0; k <= n; ++k) {
    all.emplace_back(binomial(n, k) * std::pow(share, k) * std::pow(1 - share, n - k), k);
  }
  return all;
}

// R2: every use whose window holds is an independent random number.
std::vector<Outcome> joint_outcomes(const model::Study& study, const Situation& situation) {
  const WindowNumbers numbers = number_windows(study);
  std::vector<Outcome> all{{1.0, std::vector<double>(study.workloads.size(), 0.0)}};
  for (std::size_t w = 0; w < study.workloads.size(); ++w) {
    for (std::size_t u = 0; u < study.workloads[w].uses.size(); ++u) {
      if (!situation.holds[numbers.use[w][u]]) continue;
      std::vector<Outcome> next;
      for (const Outcome& outcome : all) {
        for (const auto& [probability, units] : units_of(study.workloads[w].uses[u])) {
          if (probability == 0) continue;
          next.push_back(outcome);
          next.back().probability *= probability;
          next.back().units[w] += units;
        }
      }
      all = next;
    }
  }
  return all;
}

// Readings of one meter share one factor.
double meter_scale(const model::Study& study, const model::Profile& profile) {
  for (const model::Meter& meter : study.meters) {
    if (profile.meter == meter.id) return meter.scale.central();
  }
  return 1;
}

double central_w(const model::PowerRange& range) { return units::in_watts(range.central()); }

// R3: linear between the values at 0, 1, 2, 3 ... units.
double watts_of_units(const model::PerUnit& form, double units) {
  const double each = central_w(form.each);
  const double first = form.first ? central_w(*form.first) : each;
  return units <= 1 ? first * units : first + each * (units - 1);
}

double watts_of_units(const model::UnitTable& form, double units) {
  const double last = static_cast<double>(form.watts_at.size());
  const double n = std::min(units, last);
  const auto at = [&](double whole) {
    return whole == 0 ? 0.0 : units::in_watts(form.watts_at[static_cast<std::size_t>(whole) - 1]);
  };
  const double below = std::floor(n);
  const double above = std::min(below + 1, last);
  return at(below) + (at(above) - at(below)) * (n - below);
}

double increment_w(const model::Increment& increment, double units) {
  if (const auto* per_unit = std::get_if<model::PerUnit>(&increment.form)) {
    return watts_of_units(*per_unit, units);
  }
  if (const auto* table = std::get_if<model::UnitTable>(&increment.form)) {
    return watts_of_units(*table, units);
  }
  return 0;
}

double load_of(const model::Study& study, const model::Profile& profile, const model::Task& task,
               double units) {
  if (const auto* load = std::get_if<model::LoadPerUnit>(&task.increment.form)) {
    return units * load->fraction.central();
  }
  if (std::holds_alternative<model::LoadFromCompute>(task.increment.form)) {
    const auto& compute = *study.workloads[task.workload].compute;
    return units * (compute.central() / profile.capacity->central());
  }
  return 0;
}

double idle_w(const model::Profile& profile) {
  return profile.at_load.empty() ? central_w(profile.idle) : units::in_watts(profile.at_load[0]);
}

// R4: watts above idle at the load u, before the cap.
double load_w(const model::Profile& profile, double u) {
  if (!profile.at_load.empty()) {
    const double steps = static_cast<double>(profile.at_load.size() - 1);
    const std::size_t below =
        std::min(static_cast<std::size_t>(u * steps), profile.at_load.size() - 2);
    const double low = units::in_watts(profile.at_load[below]);
    const double high = units::in_watts(profile.at_load[below + 1]);
    return low + (high - low) * (u * steps - static_cast<double>(below)) - idle_w(profile);
  }
  if (!profile.busy) return 0;
  const double f = profile.curve == model::Curve::linear ? u : 2 * u - std::pow(u, 1.4);
  return (central_w(*profile.busy) - idle_w(profile)) * f;
}

std::vector<model::Task> tasks_of(const model::Device& device) {
  std::vector<model::Task> tasks = device.runs;
  tasks.insert(tasks.end(), device.assists.begin(), device.assists.end());
  return tasks;
}

// R3, R4, R7: a device that is switched on, in one outcome.
Draw draw_when_on(const model::Study& study, const model::Device& device,
                  const std::vector<double>& units) {
  const model::Profile& profile = *device.profile;
  const std::vector<model::Task> tasks = tasks_of(device);
  Draw draw;
  std::vector<double> adds(study.workloads.size(), 0.0);

  double load = 0;
  for (const model::Task& task : tasks) {
    const double n = units[task.workload];
    if (n > 0) draw.state = kActive;
    adds[task.workload] += increment_w(task.increment, n);
    load += load_of(study, profile, task, n);
  }
  draw.overload = load > 1 + 1e-9;

  const double for_load = load_w(profile, std::min(1.0, load));
  for (const model::Task& task : tasks) {
    if (load == 0) break;
    const double part = load_of(study, profile, task, units[task.workload]) / load;
    adds[task.workload] += for_load * part;
  }

  for (std::size_t g = 0; g < profile.groups.size(); ++g) {
    std::vector<std::size_t> in_use;
    for (const model::Task& task : tasks) {
      if (task.increment.group == g && units[task.workload] > 0) in_use.push_back(task.workload);
    }
    for (const std::size_t workload : in_use) {
      adds[workload] += central_w(profile.groups[g].watts) / static_cast<double>(in_use.size());
    }
  }

  double sum = 0;
  for (const double watts : adds) sum += watts;
  double capped = idle_w(profile) + sum;
  if (profile.max) capped = std::min(central_w(*profile.max), capped);
  const double above_idle = capped - idle_w(profile);

  const double scale = meter_scale(study, profile);
  draw.watts = scale * capped;
  draw.base_w = scale * (capped - above_idle);
  for (const double watts : adds) {
    draw.workload_w.push_back(sum == 0 ? 0.0 : scale * above_idle * watts / sum);
  }
  return draw;
}

Draw draw_at_rest(const model::Study& study, const model::Device& device, model::RestState state) {
  const model::Profile& profile = *device.profile;
  Draw draw;
  draw.state = state == model::RestState::off ? kOff : kSleep;
  draw.watts = meter_scale(study, profile) *
               central_w(state == model::RestState::off ? profile.off : *profile.sleep);
  draw.base_w = draw.watts;
  draw.workload_w.assign(study.workloads.size(), 0.0);
  return draw;
}

// As measured by hour of the week: all base, nobody's use.
Draw draw_of_week(const model::Study& study, const model::Device& device, std::size_t hour) {
  const model::Profile& profile = *device.profile;
  Draw draw;
  draw.watts = meter_scale(study, profile) * units::in_watts((*profile.week)[hour]);
  draw.base_w = draw.watts;
  draw.workload_w.assign(study.workloads.size(), 0.0);
  return draw;
}

// R5: the first rest entry that holds wins.
std::optional<model::RestState> rest_of(const model::Device& device,
                                        const std::vector<std::size_t>& numbers,
                                        const Situation& situation) {
  for (std::size_t r = 0; r < device.rests.size(); ++r) {
    if (situation.holds[numbers[r]]) return device.rests[r].state;
  }
  return std::nullopt;
}

// Of each device of a candidate; nothing where it is switched on.
using Rests = std::vector<std::optional<model::RestState>>;

bool takes_part(const model::Device& device, std::size_t workload) {
  for (const model::Task& task : tasks_of(device)) {
    if (task.workload == workload) return true;
  }
  return false;
}

// R5: served while every device that runs or assists the workload is switched on.
std::vector<bool> served_workloads(const model::Study& study, const model::Candidate& candidate,
                                   const Rests& rests) {
  std::vector<bool> served(study.workloads.size(), true);
  for (const std::size_t skipped : candidate.skips) served[skipped] = false;
  for (std::size_t d = 0; d < candidate.devices.size(); ++d) {
    for (std::size_t w = 0; w < served.size(); ++w) {
      if (rests[d] && takes_part(candidate.devices[d], w)) served[w] = false;
    }
  }
  return served;
}

void add_draw(CandidateExpected& sum, std::size_t d, const Draw& draw, double probability,
              int count) {
  const double copies = probability * count;
  sum.watts += copies * draw.watts;
  sum.base_w += copies * draw.base_w;
  for (std::size_t w = 0; w < draw.workload_w.size(); ++w) {
    sum.workload_w[w] += copies * draw.workload_w[w];
  }
  sum.state_devices[draw.state] += copies;
  sum.state_w[draw.state] += copies * draw.watts;
  DeviceExpected& device = sum.devices[d];
  device.watts += probability * draw.watts;
  device.highest_w = std::max(device.highest_w, draw.watts);
  if (draw.overload) device.overload_probability += probability;
}

}  // namespace

CandidateExpected expected_draw(const model::Study& study, std::size_t candidate_index,
                                const Situation& situation) {
  const model::Candidate& candidate = study.candidates[candidate_index];
  const auto numbers = number_windows(study).rest[candidate_index];
  Rests rests;
  for (std::size_t d = 0; d < candidate.devices.size(); ++d) {
    rests.push_back(rest_of(candidate.devices[d], numbers[d], situation));
  }
  const std::vector<bool> served = served_workloads(study, candidate, rests);

  CandidateExpected sum;
  sum.workload_w.assign(study.workloads.size(), 0.0);
  sum.served_units = sum.unserved_units = sum.workload_w;
  sum.devices.resize(candidate.devices.size());

  for (const Outcome& outcome : joint_outcomes(study, situation)) {
    std::vector<double> units = outcome.units;
    for (std::size_t w = 0; w < units.size(); ++w) {
      (served[w] ? sum.served_units : sum.unserved_units)[w] += outcome.probability * units[w];
      if (!served[w]) units[w] = 0;
    }
    double together_w = 0;
    for (std::size_t d = 0; d < candidate.devices.size(); ++d) {
      const model::Device& device = candidate.devices[d];
      const Draw draw = rests[d]               ? draw_at_rest(study, device, *rests[d])
                        : device.profile->week ? draw_of_week(study, device, situation.hour_of_week)
                                               : draw_when_on(study, device, units);
      add_draw(sum, d, draw, outcome.probability, device.count);
      together_w += device.count * draw.watts;
    }
    sum.highest_w = std::max(sum.highest_w, together_w);
    sum.outcomes.emplace_back(together_w, outcome.probability);
  }
  return sum;
}

}  // namespace wattweek::oracle
