#pragma once
// What a candidate draws in one situation: every joint outcome of the units in use written down
// with its probability, and the rules of drawing and of attribution applied to each.

#include <array>
#include <utility>
#include <vector>

#include "minutes.hpp"
#include "reckoned.hpp"
#include "wattweek/model/study.hpp"

namespace wattweek::oracle {

/// Expected figures of a device at an instant; watts of one copy.
struct DeviceExpected {
  double watts = 0;
  double highest_w = 0;  ///< In any outcome of positive probability.
  double overload_probability = 0;
};

/// Expected figures of a candidate at an instant; all copies of its devices together.
struct CandidateExpected {
  double watts = 0;
  double highest_w = 0;
  double base_w = 0;
  std::vector<double> workload_w;
  std::vector<double> served_units;
  std::vector<double> unserved_units;
  std::array<double, kStateCount> state_devices{};  ///< Expected number of devices.
  std::array<double, kStateCount> state_w{};
  std::vector<DeviceExpected> devices;
  /// Watts of all devices together and their probability, one for each joint outcome.
  std::vector<std::pair<double, double>> outcomes;
};

CandidateExpected expected_draw(const model::Study& study, std::size_t candidate,
                                const Situation& situation);

}  // namespace wattweek::oracle
