#pragma once
// What a workload adds to a device: by the profile, or reckoned from the work that it is.

#include <string>

#include "wattweek/model/study.hpp"

namespace wattweek::read {

struct TaskQuestion {
  const model::Device& device;
  const std::string& candidate_id;
  const model::Workload& workload;
};

struct Answer {
  model::Increment increment;
  std::string problem;  ///< What is missing and what to add; empty where nothing is.
};

/// The increment of the workload on the device.
Answer increment_of(const TaskQuestion& question);

}  // namespace wattweek::read
