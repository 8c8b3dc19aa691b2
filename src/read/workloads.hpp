#pragma once
// `[[workload]]` with its uses, and `[[away]]`.

#include <vector>

#include "ids.hpp"
#include "table.hpp"
#include "wattweek/model/study.hpp"

namespace wattweek::read {

struct WorkloadList {
  std::vector<model::Workload> workloads;
  std::vector<bool> is_sound;  ///< For each: nothing in it was reported.
  Ids ids{"workload"};
};

WorkloadList read_workloads(const Table& study);

std::vector<model::Away> read_away(const Table& study, const WorkloadList& list);

}  // namespace wattweek::read
