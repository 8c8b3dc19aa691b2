#pragma once
// For how many hours a candidate draws how much.

#include <vector>

#include "wattweek/energy/plan.hpp"
#include "wattweek/power/device_law.hpp"

namespace wattweek::energy {

/// So many hours of the study at so many watts, all devices of a candidate together.
struct LoadHours {
  double watts = 0;
  double hours = 0;
};

/// The most watts first; watts within 1e-9 of each other, relative above 1 W, are the same. The
/// distribution of `power::LoadReckoner` in each combination of the devices' situations, times
/// its hours. Outcomes too rare for a double have no hours and are left out. Empty where more than
/// `power::kMostLoadOutcomes` joint outcomes would be formed.
/// \pre `law` is of the candidate that the plan is of.
std::vector<LoadHours> load_hours(const CandidatePlan& plan, const power::CandidateLaw& law);

}  // namespace wattweek::energy
