#pragma once
// Which device of a candidate runs which workload, takes part in which, and what each adds.

#include <vector>

#include "ids.hpp"
#include "table.hpp"
#include "wattweek/model/study.hpp"
#include "workloads.hpp"

namespace wattweek::read {

/// A device as read, before its workloads are settled.
struct DeviceDraft {
  model::Device device;  ///< `profile` is null where it has mistakes.
  Table table;
  ReferenceList runs;
  ReferenceList assists;
};

/// A candidate as read, before its devices' workloads are settled.
struct CandidateDraft {
  model::Candidate candidate;
  Table table;
  ReferenceList skips;
  std::vector<DeviceDraft> devices;
};

/// Settles `runs` and `assists` of all devices; reports every workload that is left over, run
/// twice, both run and skipped, or lacks an increment, every assist to what no other device runs,
/// and every workload that a device with a week would run or assist.
void assign_tasks(CandidateDraft& draft, const WorkloadList& list);

}  // namespace wattweek::read
