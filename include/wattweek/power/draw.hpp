#pragma once
// Start here: what a device that is switched on draws while its workloads' units in use are
// random. Exact expectations over the joint distribution: the cap, the curve and the groups
// act on each joint outcome, never on averages.
//
// Where nothing couples the workloads, expectations add and no joint outcome is formed. What
// is coupled - the members of a group, the loads under a curve, everything under a cap that
// can be reached - goes through a lattice of outcomes in which equal sums are merged.

#include <cstdint>
#include <memory>
#include <vector>

#include "wattweek/power/device_law.hpp"
#include "wattweek/power/units_in_use.hpp"

namespace wattweek::power {

/// What one copy of a device does in one situation, switched on.
struct Draw {
  /// Expected watts above idle due to each task, in the law's order. In each outcome the
  /// watts above idle, after the cap, are shared in proportion to what each task contributes
  /// before it; a group's watts are split equally among its members in use; the loads share
  /// the curve's watts in proportion to units x load. They sum to the expected draw less idle.
  std::vector<double> task_w;
  double active = 0;     ///< Probability that any of the tasks has units in use.
  double highest_w = 0;  ///< The most drawn in any outcome of positive probability.
  double overload = 0;   ///< Probability that the sum of units x load exceeds 1 by over 1e-9.
};

/// Reckons draws; keeps its work space from call to call.
class DrawReckoner {
 public:
  DrawReckoner();
  ~DrawReckoner();
  DrawReckoner(const DrawReckoner&) = delete;
  DrawReckoner& operator=(const DrawReckoner&) = delete;

  /// The draw of a device while task i has `*in_use[i]` units in use. Returns false, and leaves
  /// `draw` unspecified, where more than `kMostOutcomes` merged outcomes would be needed.
  [[nodiscard]] bool reckon(const DeviceLaw& law, const std::vector<const UnitsInUse*>& in_use,
                            Draw& draw);

  /// The expected watts above idle alone, without who draws them: the sum of `Draw::task_w`, at a
  /// fraction of its cost. Returns false as `reckon` does.
  [[nodiscard]] bool reckon_mean(const DeviceLaw& law, const std::vector<const UnitsInUse*>& in_use,
                                 double& above_idle_w);

  /// Joint outcomes formed since the reckoner was made: what they cost.
  std::uint64_t outcomes_formed() const;

 private:
  class Inside;
  std::unique_ptr<Inside> inside_;
};

}  // namespace wattweek::power
