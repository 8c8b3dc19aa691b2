#pragma once
// How many units of a workload are in use at an instant: a random number with few values.
//
// Simplification: different workloads, and different uses of one workload, are independent.

#include <cstddef>
#include <vector>

#include "wattweek/model/study.hpp"

namespace wattweek::power {

/// Beyond this many merged outcomes the program refuses rather than approximates in silence.
inline constexpr std::size_t kMostOutcomes = std::size_t{1} << 20U;

/// One use with its figures settled: so many units, with that probability.
struct UseLaw {
  double units = 1;
  double share = 1;  ///< Within 0..1.
  model::Pattern pattern = model::Pattern::together;

  friend bool operator==(const UseLaw&, const UseLaw&) = default;
};

/// A distribution over units in use. Values ascend, probabilities are positive and sum to 1.
struct UnitsInUse {
  std::vector<double> units;
  std::vector<double> probability;
  double mean = 0;  ///< Expected units, reckoned from the uses, not from the outcomes.
  double most = 0;  ///< The most units that have a positive probability, however small.

  /// Probability that any unit is in use.
  double any() const { return 1.0 - none(); }
  /// Probability that none is.
  double none() const { return units.front() > 0 ? 0.0 : probability.front(); }
};

/// Units of one use in its window: `units` with probability `share` (together), or the
/// binomial distribution of `units` trials (independent).
///
///     P(k) = n! / (k! (n-k)!) p^k (1-p)^(n-k)
///
/// reckoned outward from its mode and normalised, so that large n neither overflow nor lose
/// digits. Outcomes too rare for a double are left out, but count for `most`.
/// \pre An independent use has fewer than `kMostOutcomes` units.
UnitsInUse units_in_use(const UseLaw& use);

/// Units of a workload whose uses hold together: the sum of independent numbers, equal sums
/// merged. Returns false, and leaves `sum` unspecified, beyond `kMostOutcomes` values. What
/// memory `sum` holds is used again.
[[nodiscard]] bool units_in_use(const std::vector<UseLaw>& uses, UnitsInUse& sum);

}  // namespace wattweek::power
