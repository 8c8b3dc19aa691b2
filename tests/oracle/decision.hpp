#pragma once
// Money over years, and each candidate against the baseline.

#include <functional>
#include <optional>
#include <vector>

#include "reckoned.hpp"
#include "wattweek/model/study.hpp"

namespace wattweek::oracle {

/// One candidate beside another, with all that the rows of a comparison ask of it.
struct Contender {
  const model::Candidate* candidate = nullptr;
  double energy_kwh = 0;
  double cost = 0;
  /// The study's cost where all band and block prices are multiplied.
  std::function<double(double price_factor)> cost_at;
  /// Factors at which one of its bills leaves the minimum; `cost_at` is linear between them.
  std::vector<double> kinks;
};

/// Nothing without a horizon.
std::optional<LifetimeOfCandidate> lifetime_of(const model::Study& study,
                                               const Contender& contender);

RowReckoned compare(const model::Study& study, const Contender& candidate,
                    const Contender& baseline);

}  // namespace wattweek::oracle
