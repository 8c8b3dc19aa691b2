#include "factored_study.hpp"

#include <algorithm>
#include <memory>

namespace wattweek::decide {

namespace {

using Kind = Factor::Kind;

/// The range, raised where it is needed to reach another.
model::PowerRange risen(const model::PowerRange& range, const model::PowerRange& least) {
  return {std::max(range.low, least.low), std::max(range.high, least.high)};
}

}  // namespace

FactorValues::FactorValues(const model::Study& study)
    : use_of(study.workloads.size(), 1.0),
      idle_of(study.candidates.size(), 1.0),
      purchase_of(study.candidates.size(), 1.0) {}

double& FactorValues::of(const Factor& factor) {
  switch (factor.kind) {
    case Kind::price:
      return price;
    case Kind::use:
      return use;
    case Kind::purchase:
      return purchase;
    case Kind::household:
      return household;
    case Kind::use_of:
      return use_of[factor.index];
    case Kind::idle_of:
      return idle_of[factor.index];
    case Kind::purchase_of:
      break;
  }
  return purchase_of[factor.index];
}

bool acts_on_energy(const Factor& factor) {
  return factor.kind == Kind::use || factor.kind == Kind::use_of || factor.kind == Kind::idle_of;
}

FactoredStudy::FactoredStudy(const model::Study& study) : base_(study), study_(study) {
  for (model::Candidate& candidate : study_.candidates) {
    auto& of_candidate = profiles_.emplace_back();
    for (model::Device& device : candidate.devices) {
      const auto copy = std::make_shared<model::Profile>(*device.profile);
      of_candidate.push_back(copy.get());
      device.profile = copy;
    }
  }
}

void FactoredStudy::set_shares(const FactorValues& values) {
  for (std::size_t w = 0; w < study_.workloads.size(); ++w) {
    const double factor = values.use * values.use_of[w];
    for (std::size_t u = 0; u < study_.workloads[w].uses.size(); ++u) {
      const units::Range<double>& share = base_.workloads[w].uses[u].share;
      study_.workloads[w].uses[u].share = {std::min(1.0, share.low * factor),
                                           std::min(1.0, share.high * factor)};
    }
  }
}

void FactoredStudy::append_shares(std::vector<double>& to) const {
  for (const model::Workload& workload : study_.workloads) {
    for (const model::Use& use : workload.uses) {
      to.push_back(use.share.low);
      to.push_back(use.share.high);
    }
  }
}

void FactoredStudy::set_idle(std::size_t candidate, double factor) {
  for (std::size_t d = 0; d < profiles_[candidate].size(); ++d) {
    const model::Profile& base = *base_.candidates[candidate].devices[d].profile;
    model::Profile& profile = *profiles_[candidate][d];
    if (!base.at_load.empty() || base.week) continue;  // It has no idle of its own.
    profile.idle = {base.idle.low * factor, base.idle.high * factor};
    if (base.busy) profile.busy = risen(*base.busy, profile.idle);
    if (base.max) profile.max = risen(*base.max, profile.idle);
  }
}

}  // namespace wattweek::decide
