#pragma once
// Start here: a candidate's energy, by month, price band, workload, state and device.

#include <Eigen/Core>
#include <array>
#include <cstddef>
#include <memory>
#include <optional>
#include <vector>

#include "wattweek/energy/plan.hpp"
#include "wattweek/power/device_law.hpp"

namespace wattweek::energy {

struct StateTotal {
  double device_hours = 0;
  double energy_kwh = 0;
};

struct UnitHours {
  double served = 0;
  double unserved = 0;
};

/// All copies of a device together, but for `overload_hours`.
struct DeviceTotal {
  double energy_kwh = 0;
  double highest_w = 0;
  double overload_hours = 0;
};

struct Ledger {
  /// kWh. Rows are cells (month, band), see `Fold::cell`; column 0 is the base (all that is
  /// drawn up to idle, asleep or off), column 1 + w the workload w of the study.
  Eigen::MatrixXd kwh;
  std::array<StateTotal, kStates> states;  ///< Indexed by `State`; device-hours.
  std::vector<UnitHours> unit_hours;       ///< By workload.
  std::vector<DeviceTotal> devices;
  double highest_w = 0;  ///< Of all devices at one instant, in any outcome that can occur.

  double total_kwh() const { return kwh.sum(); }
};

/// More joint outcomes than the program will merge, for this device and situation.
struct TooManyOutcomes {
  std::size_t device = 0;
  std::size_t situation = 0;  ///< Index into `DevicePlan::situations`.
};

/// What of a law is known to be that of the call before: the devices, so that situations in which
/// the same uses hold as before are not reckoned again; or nothing.
enum class Devices { may_differ, as_before };

/// Reckons one plan under one law after the other, and keeps its work space from call to call:
/// what a what-if repeats.
///
/// Energy = hours x expected watts, one matrix product for each device:
///
///     E[month, band][cause] = sum over situations of hours[month, band][s] * watts[s][cause]
///
/// Sums are added in file order, so that every build gives the same digits.
class Reckoner {
 public:
  /// `plan` must outlive the reckoner.
  explicit Reckoner(const CandidatePlan& plan);
  ~Reckoner();
  Reckoner(const Reckoner&) = delete;
  Reckoner& operator=(const Reckoner&) = delete;

  /// Fills the ledger, or tells what has too many outcomes and leaves it unspecified.
  /// \pre `law` is of the candidate that the plan is of.
  [[nodiscard]] std::optional<TooManyOutcomes> reckon(const power::CandidateLaw& law,
                                                      Ledger& ledger);

  /// Fills `kwh` with the energy of each cell (month, band) alone, the sum of a row of
  /// `Ledger::kwh`, at a fraction of the cost: what thousands of draws repeat.
  [[nodiscard]] std::optional<TooManyOutcomes> reckon_energy(const power::CandidateLaw& law,
                                                             Eigen::VectorXd& kwh,
                                                             Devices devices = Devices::may_differ);

  /// Joint outcomes formed so far; see `power::DrawReckoner`.
  std::uint64_t outcomes_formed() const;

 private:
  class Inside;
  std::unique_ptr<Inside> inside_;
};

}  // namespace wattweek::energy
