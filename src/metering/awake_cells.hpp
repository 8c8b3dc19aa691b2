#pragma once
// The time of a log in which the device is neither off nor asleep, by combination of units in use
// and by cell of time.

#include <Eigen/Core>
#include <cstdint>
#include <vector>

#include "wattweek/metering/fit.hpp"
#include "wattweek/metering/long_run.hpp"
#include "wattweek/metering/measured.hpp"

namespace wattweek::metering {

/// Errors of minutes that lie nearer than this are taken to belong together.
inline constexpr double kLeastKernel_s = 3600;

/// A longer log takes several `parcel_seconds` for one cell: the kernel is far longer anyway.
inline constexpr Eigen::Index kMostCells = Eigen::Index{1} << 17;

/// How many cells so much time takes, at least one.
Eigen::Index cells_in(double seconds, double cell_seconds);

/// What was drawn with the same units in use.
struct DrawnInUse {
  Eigen::VectorXd columns;  ///< 1 for idle, then units in use.
  Drawn drawn;
  bool changing = false;  ///< See `Measured::changing`.
};

class AwakeCells {
 public:
  /// Keeps a reference to `measured`.
  AwakeCells(const Measured& measured, const std::vector<Level>& levels);

  bool empty() const { return cells_ == 0; }
  double cell_seconds() const { return together_ * measured_.parcel_seconds; }
  Eigen::Index cells_of(double seconds) const { return cells_in(seconds, cell_seconds()); }

  /// Those combinations that occur, in their order.
  std::vector<DrawnInUse> by_design() const;
  /// Hours, then unit-hours by workload.
  Eigen::VectorXd unit_hours() const;
  /// n / (n - p), n cells with time.
  double small_sample(Eigen::Index coefficients) const;

  /// Watts of each design by these coefficients (all columns).
  Eigen::VectorXd fitted(const Eigen::VectorXd& coefficients) const;
  /// By cell from the first to the last: sum of (direction . columns) x (joules - seconds x
  /// fitted).
  Eigen::VectorXd scores(const Eigen::VectorXd& fitted, const Eigen::VectorXd& direction) const;
  /// By cell: sum of seconds x (direction . columns)^2.
  Eigen::VectorXd weights(const Eigen::VectorXd& direction) const;
  /// All but the bandwidth.
  Residuals residuals(const Eigen::VectorXd& fitted) const;

 private:
  /// Time, energy, and energy by the fit; by cell from the first to the last.
  struct Cells {
    Eigen::VectorXd seconds;
    Eigen::VectorXd joules;
    Eigen::VectorXd fitted_joules;
  };
  Cells drawn_by_cell(const Eigen::VectorXd& fitted) const;
  Eigen::Index cell_of(const Parcel& parcel) const {
    return (parcel.minute - first_minute_) / together_;
  }

  // Time below is left out; so are parcels of no time.
  template <typename Use>
  void for_each_awake(Use use) const {
    for (const Parcel& parcel : measured_.parcels) {
      const std::size_t end_bin = (parcel.watt_class + std::size_t{1}) * kBinsOfClass;
      if (end_bin > from_bin_ && parcel.drawn.seconds > 0) use(parcel);
    }
  }
  void find_cells();

  const Measured& measured_;
  std::size_t from_bin_ = 0;
  std::int32_t first_minute_ = 0;
  std::int32_t together_ = 1;  // So many parcel_seconds make one cell.
  Eigen::Index cells_ = 0;     // From the first to the last.
  Eigen::Index with_time_ = 0;
  std::vector<Eigen::VectorXd> columns_;  // Of each design.
};

}  // namespace wattweek::metering
