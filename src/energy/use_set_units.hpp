#pragma once
// The units in use of each workload while these of its uses hold.

#include <cstdint>
#include <vector>

#include "wattweek/energy/plan.hpp"
#include "wattweek/power/device_law.hpp"
#include "wattweek/power/units_in_use.hpp"

namespace wattweek::energy {

/// By workload and use set: units in use. One with too many values has none.
using UseSetUnits = std::vector<std::vector<power::UnitsInUse>>;

/// Units in use of a plan, under one law after the other.
class UseSetBook {
 public:
  /// `plan` must outlive the book.
  explicit UseSetBook(const CandidatePlan& plan);

  /// From law to law most uses stay as they are, and are not reckoned again.
  void reckon(const power::CandidateLaw& law);

  const UseSetUnits& units() const { return units_; }

  struct UseSet {
    std::size_t workload = 0;
    std::uint32_t set = 0;
  };
  /// Those that the last law made different.
  const std::vector<UseSet>& changed() const { return changed_; }

 private:
  void find_units(std::size_t workload, std::uint32_t set);

  const CandidatePlan& plan_;
  UseSetUnits units_;
  std::vector<std::vector<std::vector<power::UseLaw>>> known_uses_;  // What `units_` are of.
  std::vector<power::UseLaw> uses_;                                  // Of one set.
  std::vector<UseSet> changed_;
};

/// The units in use of each of a device's tasks in a situation. False where a workload has more
/// values of them than the program will merge.
bool find_units_in_use(const DevicePlan& plan, const DeviceSituation& situation,
                       const UseSetUnits& units, std::vector<const power::UnitsInUse*>& in_use);

}  // namespace wattweek::energy
