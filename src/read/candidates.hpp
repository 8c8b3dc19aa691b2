#pragma once
// `[[candidate]]` with its devices.

#include <optional>
#include <vector>

#include "ids.hpp"
#include "linked_files.hpp"
#include "table.hpp"
#include "wattweek/model/study.hpp"
#include "workloads.hpp"

namespace wattweek::read {

/// What the candidates are read against.
struct CandidateContext {
  const WorkloadList& workloads;
  LinkedFiles& linked;
  std::optional<int> years;  ///< The finance years, where given.
};

struct CandidateList {
  std::vector<model::Candidate> candidates;
  Ids ids{"candidate"};
};

CandidateList read_candidates(const Table& study, const CandidateContext& context);

}  // namespace wattweek::read
