#pragma once
// What machines are used for: uses in every pattern, with shares and with minutes.

#include <string>
#include <vector>

#include "random_profile.hpp"
#include "random_window.hpp"

namespace wattweek::oracle {

/// The workloads of a study, up to four; appends what profiles must know of each.
std::string random_workloads(Dice& dice, const Period& period,
                             std::vector<WorkloadSketch>& workloads);

}  // namespace wattweek::oracle
