#pragma once
// `[[candidate.device]]` with its profile and rests.

#include <vector>

#include "candidates.hpp"
#include "tasks.hpp"

namespace wattweek::read {

/// The devices of a candidate, their workloads not settled yet.
std::vector<DeviceDraft> read_devices(const Table& candidate, const CandidateContext& context);

}  // namespace wattweek::read
