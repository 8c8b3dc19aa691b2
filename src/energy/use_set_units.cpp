#include "use_set_units.hpp"

namespace wattweek::energy {

UseSetBook::UseSetBook(const CandidatePlan& plan) : plan_(plan) {
  for (const auto& sets : plan.use_sets) {
    units_.emplace_back(sets.size());
    known_uses_.emplace_back(sets.size());
  }
}

void UseSetBook::reckon(const power::CandidateLaw& law) {
  changed_.clear();
  for (std::size_t w = 0; w < plan_.use_sets.size(); ++w) {
    for (std::uint32_t set = 0; set < plan_.use_sets[w].size(); ++set) {
      uses_.clear();
      for (const std::uint32_t u : plan_.use_sets[w][set]) uses_.push_back(law.uses[w][u]);
      find_units(w, set);
    }
  }
}

void UseSetBook::find_units(std::size_t workload, std::uint32_t set) {
  std::vector<power::UseLaw>& known = known_uses_[workload][set];
  power::UnitsInUse& units = units_[workload][set];
  if (!units.units.empty() && known == uses_) return;
  known = uses_;
  changed_.push_back({workload, set});
  if (!power::units_in_use(uses_, units)) units = {};
}

bool find_units_in_use(const DevicePlan& plan, const DeviceSituation& situation,
                       const UseSetUnits& units, std::vector<const power::UnitsInUse*>& in_use) {
  in_use.clear();
  for (std::size_t t = 0; t < situation.use_set.size(); ++t) {
    in_use.push_back(&units[plan.workloads[t]][situation.use_set[t]]);
    if (in_use.back()->units.empty()) return false;
  }
  return true;
}

}  // namespace wattweek::energy
