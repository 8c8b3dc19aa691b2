#pragma once
// What a meter log says about a device: levels, idle watts and increments, the week and the year.

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "wattweek/metering/measured.hpp"

namespace wattweek::metering {

enum class State { off, sleep, idle, active };

/// A height at which the watts stay for a while.
struct Level {
  State state = State::idle;
  double watts = 0;  ///< Mean of the time spent there.
  double hours = 0;
  double from_w = 0;  ///< Watts in [from_w, to_w) belong to it.
  double to_w = 0;
};

/// A figure with the standard deviation of its error: what is left of noise and of readings to
/// whole steps. Without the meter's own error.
struct Estimate {
  double value = 0;
  double standard_error = 0;
};

struct IncrementEstimate {
  std::string workload;
  /// Watts for each unit in use. Nothing where the log cannot tell them: never in use, or in step
  /// with other workloads or with idle.
  std::optional<Estimate> each_w{};
  double unit_hours = 0;  ///< Seen in the log, in time that is neither off nor asleep.
  /// Workloads that are always in use in step with this one (or that together are), so that the
  /// log cannot tell whose watts they are.
  std::vector<std::string> in_step_with{};
  /// In use all the time in the same measure (or so together with those above), so that the log
  /// cannot tell its watts from idle.
  bool in_step_with_idle = false;
};

/// What the regression left unexplained.
struct Residuals {
  /// Weighted by time, of cells: `Measured::parcel_seconds`, or some of them in a long log.
  double sd_w = 0;
  /// Correlation, about 0, of cells with time that are one usual step apart; from -1 to 1.
  double lag_one = 0;
  double largest_w = 0;    ///< Farthest cell.
  double bandwidth_s = 0;  ///< Of the Bartlett kernel.
  double explained = 0;    ///< R squared, of cells.
};

/// The meter's limits of error: percent of the reading plus watts.
struct MeterError {
  double percent = 0;
  double watts = 0;

  double at(double reading_w) const { return percent / 100 * reading_w + watts; }
};

/// Watts by local hour of the week, Monday 00:00 first; nothing where the log has none.
using Week = std::array<std::optional<double>, 168>;

/// The year if every week were like the covered ones: 365 days of the mean week.
struct YearForecast {
  std::optional<double> energy_kwh;  ///< Nothing where an hour of the week was never seen.
  std::optional<double> low;         ///< 95 %; nothing where fewer than 336 hours are covered.
  std::optional<double> high;
  std::size_t weeks = 0;  ///< Full weeks that the interval rests on.
};

}  // namespace wattweek::metering
