#pragma once
// A device's profile with every kind of increment, curve, cap and group.

#include <string>
#include <vector>

#include "dice.hpp"

namespace wattweek::oracle {

/// What a profile must know of a workload.
struct WorkloadSketch {
  std::string id;
  bool has_compute = false;
  int most_units = 1;  ///< In use at once, at the most.
};

struct ProfileText {
  std::string plain_keys;  ///< Those that stand before the first table.
  std::string tables;
  double most_w = 0;  ///< It never draws more than this.
};

/// Its watts may have been read on the meter `kMeterId`, where the study has one.
inline constexpr const char* kMeterId = "plug-meter";

/// `prefix` is put before the names of tables: "candidate.device." where the profile stands in
/// the study. Every workload gets what a device that runs it needs.
ProfileText random_profile(Dice& dice, const std::vector<WorkloadSketch>& workloads,
                           const std::string& prefix, bool has_meter);

/// Watts by hour of the week: of few values or of many.
ProfileText random_week_profile(Dice& dice, const std::string& prefix, bool has_meter);

}  // namespace wattweek::oracle
