#include "wattweek/power/device_law.hpp"

#include <algorithm>
#include <cmath>
#include <type_traits>

namespace wattweek::power {

namespace {

using units::in_watts;

// The exponent that Fan, Weber and Barroso fitted to their servers.
constexpr double kConcaveExponent = 1.4;

// The profile's figures at the wall, after its meter's scale.
class ScaledWatts {
 public:
  ScaledWatts(const model::Study& study, const model::Profile& profile) {
    if (!profile.meter) return;
    for (const model::Meter& meter : study.meters) {
      if (meter.id == *profile.meter) scale_ = meter.scale.central();
    }
  }
  double operator()(const model::PowerRange& range) const {
    return scale_ * in_watts(range.central());
  }
  double operator()(units::Power power) const { return scale_ * in_watts(power); }

 private:
  double scale_ = 1;
};

// Puts the figures of an increment's form into a task's law.
struct FormVisitor {
  const ScaledWatts& scaled;
  const model::Workload& workload;
  const model::Profile& profile;
  TaskLaw& task;

  void operator()(const model::PerUnit& form) const {
    task.each_w = scaled(form.each);
    task.first_w = form.first ? scaled(*form.first) : task.each_w;
  }
  void operator()(const model::UnitTable& form) const {
    for (const units::Power power : form.watts_at) task.table_w.push_back(scaled(power));
  }
  void operator()(const model::LoadPerUnit& form) const {
    task.load_per_unit = form.fraction.central();
  }
  void operator()(const model::LoadFromCompute&) const {
    task.load_per_unit = workload.compute->central() / profile.capacity->central();
  }
  void operator()(const model::GroupOnly&) const {}
};

TaskLaw task_law(const model::Study& study, const model::Profile& profile,
                 const ScaledWatts& scaled, const model::Task& from) {
  TaskLaw task;
  task.workload = from.workload;
  task.group = from.increment.group;
  std::visit(FormVisitor{scaled, study.workloads[from.workload], profile, task},
             from.increment.form);
  return task;
}

DeviceLaw device_law(const model::Study& study, const model::Device& device) {
  const model::Profile& profile = *device.profile;
  const ScaledWatts scaled(study, profile);
  DeviceLaw law;
  law.count = device.count;
  law.off_w = scaled(profile.off);
  if (profile.sleep) law.sleep_w = scaled(*profile.sleep);
  law.idle_w = scaled(profile.idle);
  if (profile.max) law.max_w = scaled(*profile.max);
  if (profile.busy) law.full_load_w = scaled(*profile.busy) - law.idle_w;
  law.curve = profile.curve;
  for (const units::Power power : profile.at_load) {
    law.at_load_w.push_back(scaled(power) - scaled(profile.at_load.front()));
  }
  if (profile.week) {
    for (const units::Power power : *profile.week) law.week_w.push_back(scaled(power));
  }
  for (const model::Group& group : profile.groups) law.group_w.push_back(scaled(group.watts));
  for (const auto* tasks : {&device.runs, &device.assists}) {
    for (const model::Task& task : *tasks) {
      law.tasks.push_back(task_law(study, profile, scaled, task));
    }
  }
  std::sort(law.tasks.begin(), law.tasks.end(),
            [](const TaskLaw& a, const TaskLaw& b) { return a.workload < b.workload; });
  return law;
}

double table_value(const std::vector<double>& table, double units) {
  const auto last = static_cast<double>(table.size());
  if (units >= last) return table.back();
  const auto below = static_cast<std::size_t>(units);
  const double low = below == 0 ? 0.0 : table[below - 1];
  return low + (table[below] - low) * (units - static_cast<double>(below));
}

}  // namespace

CandidateLaw central_law(const model::Study& study, std::size_t candidate) {
  CandidateLaw law;
  for (const model::Device& device : study.candidates[candidate].devices) {
    law.devices.push_back(device_law(study, device));
  }
  settle_uses(study, law);
  return law;
}

void settle_uses(const model::Study& study, CandidateLaw& law) {
  law.uses.resize(study.workloads.size());
  for (std::size_t w = 0; w < study.workloads.size(); ++w) {
    law.uses[w].clear();
    for (const model::Use& use : study.workloads[w].uses) {
      law.uses[w].push_back({use.units, use.share.central(), use.pattern});
    }
  }
}

double increment_w(const TaskLaw& task, double units) {
  if (!task.table_w.empty()) return table_value(task.table_w, units);
  if (units <= 1) return task.first_w * units;
  return task.first_w + task.each_w * (units - 1);
}

double load_w(const DeviceLaw& law, double u) {
  if (law.at_load_w.empty()) {
    const double f = law.curve == model::Curve::linear ? u : 2 * u - std::pow(u, kConcaveExponent);
    return law.full_load_w * f;
  }
  const double steps = static_cast<double>(law.at_load_w.size() - 1);
  const double at = u * steps;
  const auto below = std::min(static_cast<std::size_t>(at), law.at_load_w.size() - 2);
  const double low = law.at_load_w[below];
  return low + (law.at_load_w[below + 1] - low) * (at - static_cast<double>(below));
}

}  // namespace wattweek::power
