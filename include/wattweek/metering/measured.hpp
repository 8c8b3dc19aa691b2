#pragma once
// What is kept of a log while it streams by: sums by hour, by watts, and by minute. Its size goes
// with the length of time, not with the number of readings.

#include <Eigen/Core>
#include <cstdint>
#include <vector>

namespace wattweek::metering {

/// Time and energy of whatever they are the sum of.
struct Drawn {
  double seconds = 0;
  double joules = 0;

  double mean_w() const { return joules / seconds; }  ///< \pre seconds > 0
};

/// Time and energy by watts. The bins are fine: their width is 1/128 of their lower end or less
/// (below kLeastBinned_w there is one bin).
inline constexpr double kLeastBinned_w = 1.0 / 64;

/// The bin that these watts fall into. \pre 0 <= watts, finite
std::size_t bin_of(double watts);
/// Lower end of a bin; it is the upper end of the one before. Of bin 0 it is 0.
double lower_w(std::size_t bin);
/// Bins that share one watt class in a `Parcel`: a class is about a tenth wide.
inline constexpr std::size_t kBinsOfClass = 16;

/// By bin; as long as the highest watts ask for.
using Histogram = std::vector<Drawn>;

/// Part of the log that is alike: what starts within one minute, with the same units in use of each
/// workload, and watts of one class. An interval that ends in a later minute is not divided.
struct Parcel {
  std::int32_t minute = 0;  ///< When it starts: whole `parcel_seconds` since the first interval.
  std::uint16_t watt_class = 0;  ///< bin / kBinsOfClass
  std::uint32_t design = 0;      ///< Row of `Measured::designs`: units in use.
  Drawn drawn;
};

/// Everything that a fit needs to know of a log.
struct Measured {
  Drawn kept;           ///< All intervals that are not dropped.
  double lowest_w = 0;  ///< Of their mean watts; 0 where there are none.
  double highest_w = 0;
  /// By local clock hour since `first_hour` (hours of the local clock since 1970-01-01 00:00); an
  /// hour that the clocks show twice holds both.
  std::int64_t first_hour = 0;
  std::vector<Drawn> hours;
  Histogram histogram;
  Histogram unused;  ///< Of it, what was drawn while no workload was in use; as long.
  /// In order of time. Seconds of a cell: 60, doubled as often as a long log asks for.
  double parcel_seconds = 60;
  std::vector<Parcel> parcels;
  /// Rows: different combinations of units in use, each the time mean over an interval; columns:
  /// workloads. Row 0 is "none".
  std::vector<Eigen::VectorXd> designs;
  /// Of each design: do units change within its intervals, while their watts are a sample of one
  /// moment? Never so of energies and counters. May be shorter than `designs`: the rest do not.
  std::vector<bool> changing;
  /// Largest step of which all differences between values are multiples, to four decimals; of
  /// energies and counters the tick over the typical step. 0: all are equal.
  double resolution_w = 0;
  /// What a step leaves out is in a later reading, as in all logs of counters: single watts are
  /// rounded, their mean over a while is not. Energies of intervals may carry it or not.
  bool carries_rest = false;
};

}  // namespace wattweek::metering
