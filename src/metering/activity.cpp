#include "wattweek/metering/activity.hpp"

#include <algorithm>

namespace wattweek::metering {

Activity activity_of(const std::vector<logs::ActivityRow>& rows) {
  Activity activity;
  auto& names = activity.workloads;
  for (const logs::ActivityRow& row : rows) {
    const auto known = std::find(names.begin(), names.end(), row.workload);
    const auto workload = static_cast<std::size_t>(known - names.begin());
    if (known == names.end()) names.push_back(row.workload);
    activity.uses.push_back({workload, row.start_us, row.end_us, row.units});
  }
  return activity;
}

}  // namespace wattweek::metering
