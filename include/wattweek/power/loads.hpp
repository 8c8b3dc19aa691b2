#pragma once
// The exact distribution of what several devices draw together, switched on, while the units in
// use of their workloads are random: one workload has the same units in use on every device that
// runs or assists it.
//
// Devices on which nothing couples the workloads pass each increment straight to the sum. For
// each other one its watts, load and groups in use are carried along until its last workload is
// counted in; then curve, groups and cap turn them into watts. Equal sums are merged on the grid
// on which draws are reckoned, a billionth of a watt. Coupled devices that share no workload are
// reckoned apart, and their distributions added.

#include <cstddef>
#include <memory>
#include <vector>

#include "wattweek/power/device_law.hpp"
#include "wattweek/power/units_in_use.hpp"

namespace wattweek::power {

/// A device that is switched on, while its task i has `*in_use[i]` units in use.
struct DeviceOn {
  const DeviceLaw* law = nullptr;
  std::vector<const UnitsInUse*> in_use;
};

/// What all copies of all devices together draw above idle, with what probability.
struct Load {
  double above_idle_w = 0;
  double probability = 0;
};

/// A reckoner forms no more joint outcomes than this in all, some tens of milliseconds' worth.
inline constexpr std::size_t kMostLoadOutcomes = std::size_t{1} << 22U;

/// Reckons loads; keeps its work space from call to call.
class LoadReckoner {
 public:
  LoadReckoner();
  ~LoadReckoner();
  LoadReckoner(const LoadReckoner&) = delete;
  LoadReckoner& operator=(const LoadReckoner&) = delete;

  /// Ascending; the probabilities sum to 1. Outcomes too rare for a double are left out. False,
  /// with `loads` unspecified, where more than `kMostLoadOutcomes` joint outcomes would be formed
  /// since the reckoner was made.
  [[nodiscard]] bool reckon(const std::vector<DeviceOn>& devices, std::vector<Load>& loads);

 private:
  class Inside;
  std::unique_ptr<Inside> inside_;
};

}  // namespace wattweek::power
