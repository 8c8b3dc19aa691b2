#pragma once
// One device's part of the ledger: the watts of each of its situations, times their hours.

#include <Eigen/Core>
#include <array>
#include <cstddef>
#include <optional>
#include <vector>

#include "use_set_units.hpp"
#include "wattweek/energy/ledger.hpp"
#include "wattweek/power/draw.hpp"

namespace wattweek::energy {

/// What a device draws where nothing is left to chance: at rest, or by the hour of the week.
struct Steady {
  State state;
  double watts;  ///< Of one copy.
};
std::optional<Steady> steady_draw(const power::DeviceLaw& law, const DeviceSituation& situation);

class DeviceBook {
 public:
  /// `plan` must outlive the book.
  explicit DeviceBook(const DevicePlan& plan);

  /// Reckons all situations anew. Nothing, or the situation that has too many outcomes.
  std::optional<std::size_t> reckon(const power::DeviceLaw& law, const UseSetUnits& units,
                                    power::DrawReckoner& reckoner);

  /// What is known of the watts of situations no longer holds: all of it, or where one of these is
  /// served.
  void forget();
  void forget(const std::vector<UseSetBook::UseSet>& changed);

  /// Adds the energy of all copies to `kwh`, by cell, without booking it; situations whose watts
  /// are known are not reckoned again. Nothing, or the situation that has too many outcomes.
  std::optional<std::size_t> add_energy(const power::DeviceLaw& law, const UseSetUnits& units,
                                        power::DrawReckoner& reckoner, Eigen::VectorXd& kwh);

  /// Adds all copies of the device to the ledger.
  void add_to(Ledger& ledger);

  /// All copies, the most drawn in a situation.
  double highest_w(std::size_t situation) const { return law_->count * highest_w_[situation]; }

 private:
  double hours(std::size_t situation) const { return plan_.total_hours[situation]; }
  void find_serving();
  bool find_mean_w(std::size_t situation, const UseSetUnits& units, power::DrawReckoner& reckoner);
  void book_on(std::size_t situation);
  void book_steady(std::size_t situation, State state, double watts);
  void book(State state, double hours, double watts);
  void add_watts(std::size_t situation, double watts, Eigen::VectorXd& kwh) const;
  double add_cause(std::size_t cause, std::size_t column, Ledger& ledger);

  const DevicePlan& plan_;
  const power::DeviceLaw* law_ = nullptr;
  Eigen::MatrixXd watts_;  // Situations x (base, tasks), one copy.
  std::array<StateTotal, kStates> states_;
  std::vector<double> highest_w_;  // By situation, one copy.
  double overload_hours_ = 0;
  power::Draw draw_;
  std::vector<const power::UnitsInUse*> in_use_;
  Eigen::VectorXd kwh_;         // Of one cause, by cell.
  std::vector<double> mean_w_;  // By situation, one copy; NaN where it is not known.
  std::vector<std::vector<std::vector<std::uint32_t>>>
      serving_;  // [task][use set]: situations. On demand.
};

}  // namespace wattweek::energy
