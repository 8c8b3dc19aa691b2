#include "refusals.hpp"

#include "words.hpp"

namespace wattweek::decide {

diag::Diagnostic too_many_outcomes(const model::Study& study, std::size_t candidate,
                                   const calendar::FoldedStudy& folded,
                                   const energy::CandidatePlan& plan,
                                   const energy::TooManyOutcomes& refused) {
  const model::Device& device = study.candidates[candidate].devices[refused.device];
  const energy::DevicePlan& device_plan = plan.devices[refused.device];
  std::vector<bool> marked(folded.fold.situations(), false);
  for (std::size_t s = 0; s < marked.size(); ++s) {
    marked[s] = device_plan.of_fold[s] == refused.situation;
  }
  std::string workloads;
  const auto& use_set = device_plan.situations[refused.situation].use_set;
  for (std::size_t t = 0; t < use_set.size(); ++t) {
    if (use_set[t] == 0) continue;
    workloads +=
        (workloads.empty() ? "" : ", ") + quoted(study.workloads[device_plan.workloads[t]].id);
  }
  return {device.place,
          "device " + quoted(device.name) + " of candidate " +
              quoted(study.candidates[candidate].id) + ": on " +
              calendar::to_text(calendar::first_time_of(folded.fold, marked)) +
              " the units in use of " + workloads + " have more than " +
              std::to_string(power::kMostOutcomes) +
              " joint outcomes with different sums; expected fewer units or workloads at "
              "once, or no cap and curve on them"};
}

}  // namespace wattweek::decide
