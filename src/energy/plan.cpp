#include "wattweek/energy/plan.hpp"

#include <algorithm>
#include <map>

namespace wattweek::energy {

namespace {

std::vector<std::size_t> workloads_on(const model::Device& device) {
  std::vector<std::size_t> workloads;
  for (const model::Task& task : device.runs) workloads.push_back(task.workload);
  for (const model::Task& task : device.assists) workloads.push_back(task.workload);
  std::sort(workloads.begin(), workloads.end());
  return workloads;
}

// Sorts the fold's situations, one after the other, into the candidate's own.
class Planner {
 public:
  Planner(const model::Study& study, std::size_t candidate, const calendar::FoldedStudy& folded)
      : candidate_(study.candidates[candidate]),
        fold_(folded.fold),
        use_conditions_(folded.index.use),
        rest_conditions_(folded.index.rest[candidate]),
        hour_of_week_(folded.hour_of_week),
        devices_on_(study.workloads.size()) {
    plan_.use_sets.resize(study.workloads.size(), {{}});
    known_use_sets_.resize(study.workloads.size());
    plan_.devices.resize(candidate_.devices.size());
    known_situations_.resize(candidate_.devices.size());
    for (std::size_t d = 0; d < candidate_.devices.size(); ++d) {
      plan_.devices[d].workloads = workloads_on(candidate_.devices[d]);
      for (const std::size_t w : plan_.devices[d].workloads) devices_on_[w].push_back(d);
    }
    for (const auto& uses : use_conditions_) plan_.use_time.emplace_back(uses.size());
  }

  CandidatePlan run() {
    const std::vector<std::int64_t> seconds = calendar::seconds_by_situation(fold_);
    for (std::size_t s = 0; s < fold_.situations(); ++s) {
      find_power(s);
      find_use_sets(s);
      note_use_time(s, seconds[s]);
      place_devices(s, seconds[s]);
    }
    for (DevicePlan& device : plan_.devices) fill_hours(device);
    return std::move(plan_);
  }

 private:
  using Power = DeviceSituation::Power;

  void find_power(std::size_t situation) {
    power_.assign(candidate_.devices.size(), Power::on);
    for (std::size_t d = 0; d < candidate_.devices.size(); ++d) {
      const auto& conditions = rest_conditions_[d];
      for (std::size_t r = 0; r < conditions.size(); ++r) {
        if (!fold_.holds(situation, conditions[r])) continue;
        const auto state = candidate_.devices[d].rests[r].state;
        power_[d] = state == model::RestState::sleep ? Power::sleep : Power::off;
        break;
      }
    }
  }

  bool is_served(std::size_t workload) const {
    const auto& on = devices_on_[workload];
    return !on.empty() && std::all_of(on.begin(), on.end(),
                                      [this](std::size_t d) { return power_[d] == Power::on; });
  }

  // Which uses hold and are served, as one of the workload's use sets.
  void find_use_sets(std::size_t situation) {
    use_set_.assign(use_conditions_.size(), 0);
    for (std::size_t w = 0; w < use_conditions_.size(); ++w) {
      if (!is_served(w)) continue;
      std::vector<std::uint32_t> uses;
      for (std::size_t u = 0; u < use_conditions_[w].size(); ++u) {
        if (fold_.holds(situation, use_conditions_[w][u]))
          uses.push_back(static_cast<std::uint32_t>(u));
      }
      if (!uses.empty()) use_set_[w] = use_set_index(w, std::move(uses));
    }
  }

  std::uint32_t use_set_index(std::size_t workload, std::vector<std::uint32_t> uses) {
    auto& sets = plan_.use_sets[workload];
    const auto next = static_cast<std::uint32_t>(sets.size());
    const auto [known, is_new] = known_use_sets_[workload].try_emplace(uses, next);
    if (is_new) sets.push_back(std::move(uses));
    return known->second;
  }

  void note_use_time(std::size_t situation, std::int64_t seconds) {
    for (std::size_t w = 0; w < use_conditions_.size(); ++w) {
      const bool served = is_served(w);
      for (std::size_t u = 0; u < use_conditions_[w].size(); ++u) {
        if (!fold_.holds(situation, use_conditions_[w][u])) continue;
        UseTime& time = plan_.use_time[w][u];
        (served ? time.served_s : time.unserved_s) += seconds;
      }
    }
  }

  void place_devices(std::size_t situation, std::int64_t seconds) {
    std::vector<std::uint32_t> together;
    for (std::size_t d = 0; d < plan_.devices.size(); ++d) {
      const std::uint32_t index = situation_index(d, situation);
      plan_.devices[d].of_fold.push_back(index);
      together.push_back(index);
    }
    const auto [known, is_new] = known_together_.try_emplace(together, plan_.together_s.size());
    if (is_new) {
      plan_.together.insert(plan_.together.end(), together.begin(), together.end());
      plan_.together_s.push_back(0);
    }
    plan_.together_s[known->second] += seconds;
  }

  std::uint32_t situation_index(std::size_t device, std::size_t of_fold) {
    DevicePlan& plan = plan_.devices[device];
    DeviceSituation situation{power_[device], {}, 0};
    if (situation.power == Power::on) {
      for (const std::size_t w : plan.workloads) situation.use_set.push_back(use_set_[w]);
      const bool has_week = candidate_.devices[device].profile->week.has_value();
      if (has_week) situation.hour_of_week = hour_of_week_[of_fold];
    }
    const auto next = static_cast<std::uint32_t>(plan.situations.size());
    const auto [known, is_new] = known_situations_[device].try_emplace(situation, next);
    if (is_new) plan.situations.push_back(std::move(situation));
    return known->second;
  }

  void fill_hours(DevicePlan& device) const {
    const std::size_t cells = fold_.cells();
    const std::size_t situations = device.situations.size();
    const auto seconds = calendar::seconds_by_cell_and_group(fold_, device.of_fold, situations);
    device.hours.resize(static_cast<Eigen::Index>(cells), static_cast<Eigen::Index>(situations));
    for (std::size_t s = 0; s < situations; ++s) {
      device.hours.startVec(static_cast<Eigen::Index>(s));
      std::int64_t total = 0;
      for (std::size_t cell = 0; cell < cells; ++cell) {
        const std::int64_t held = seconds[s * cells + cell];
        if (held == 0) continue;
        device.hours.insertBack(static_cast<Eigen::Index>(cell), static_cast<Eigen::Index>(s)) =
            static_cast<double>(held) / 3600.0;
        total += held;
      }
      device.total_hours.push_back(static_cast<double>(total) / 3600.0);
    }
    device.hours.finalize();
  }

  const model::Candidate& candidate_;
  const calendar::Fold& fold_;
  const std::vector<std::vector<std::uint32_t>>& use_conditions_;
  const std::vector<std::vector<std::uint32_t>>& rest_conditions_;
  const std::vector<std::uint32_t>& hour_of_week_;
  std::vector<std::vector<std::size_t>> devices_on_;  // By workload: who runs or assists it.
  CandidatePlan plan_;

  std::vector<Power> power_;            // By device, in the situation at hand.
  std::vector<std::uint32_t> use_set_;  // By workload, in the situation at hand.
  std::vector<std::map<std::vector<std::uint32_t>, std::uint32_t>> known_use_sets_;
  std::vector<std::map<DeviceSituation, std::uint32_t>> known_situations_;
  std::map<std::vector<std::uint32_t>, std::size_t> known_together_;
};

}  // namespace

CandidatePlan plan_candidate(const model::Study& study, std::size_t candidate,
                             const calendar::FoldedStudy& folded) {
  return Planner(study, candidate, folded).run();
}

}  // namespace wattweek::energy
