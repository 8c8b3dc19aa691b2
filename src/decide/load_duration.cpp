#include "wattweek/decide/load_duration.hpp"

#include "wattweek/calendar/study_fold.hpp"
#include "wattweek/energy/plan.hpp"
#include "wattweek/power/device_law.hpp"

namespace wattweek::decide {

std::vector<LoadDuration> load_durations(const model::Study& study, const calendar::ZoneRules& zone,
                                         const Progress& progress) {
  const calendar::FoldedStudy folded = calendar::fold_study(study, zone);
  std::vector<LoadDuration> durations;
  const auto count = static_cast<double>(study.candidates.size());
  for (std::size_t c = 0; c < study.candidates.size(); ++c) {
    if (progress) progress(study.candidates[c].name, static_cast<double>(c) / count);
    const energy::CandidatePlan plan = energy::plan_candidate(study, c, folded);
    durations.push_back(energy::load_hours(plan, power::central_law(study, c)));
  }
  return durations;
}

}  // namespace wattweek::decide
