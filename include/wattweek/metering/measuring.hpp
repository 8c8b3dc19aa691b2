#pragma once
// Readings, as they stream by, into sums: each reading becomes an interval with mean watts, holes
// are dropped, and what is left is added up by hour, by watts and by minute.
//
// Simplifications: a sample of power is taken to hold until the next one; the mean of a counter is
// taken to be drawn evenly between two readings.

#include <memory>
#include <optional>

#include "wattweek/calendar/zone.hpp"
#include "wattweek/logs/log.hpp"
#include "wattweek/metering/activity.hpp"
#include "wattweek/metering/measured.hpp"

namespace wattweek::metering {

/// Watts above this are no reading of a plug.
inline constexpr double kHighestReading_w = 1e6;

struct MeasuringOptions {
  calendar::ZoneRules zone;  ///< Whose week it is; covers the log.
  std::optional<double>
      gap_s;  ///< Intervals longer than this are dropped; nothing: see `Coverage`.
  Activity activity{};
};

/// How much of the time the log tells about.
struct Coverage {
  std::size_t readings = 0;         ///< With a value.
  logs::Microseconds first_us = 0;  ///< Begin of the first interval, or the first stamp.
  logs::Microseconds last_us = 0;   ///< End of the last interval, or the last stamp.
  double covered_hours = 0;
  double longest_step_s = 0;  ///< Longest time between neighbouring readings.
  logs::Microseconds longest_step_at_us = 0;
  double typical_step_s = 0;  ///< Median time between neighbouring readings.
  /// Rows come only when the value moved: neighbouring values differ and steps are irregular. No
  /// gap applies, unless one is given.
  bool change_only = false;
  double gap_s = 0;           ///< What was applied; infinite for change-only logs and counters.
  double dropped_hours = 0;   ///< Of all intervals that were dropped.
  std::size_t restarts = 0;   ///< Falls of a counter.
  double longest_zero_s = 0;  ///< Longest time at exactly 0 W.
  logs::Microseconds longest_zero_at_us = 0;

  double span_hours() const { return static_cast<double>(last_us - first_us) / 3.6e9; }
};

struct Measurement {
  Measured measured;
  Coverage coverage;
};

/// Takes a log's readings and keeps what a fit needs.
///
/// Power: a reading holds until the next, an interval longer than the gap is dropped whole, the
/// last reading has no interval. Energy: belongs to the interval that starts (ends) at the stamp
/// and lasts until the next (since the last) stamp; the last (first) one is taken to be as long as
/// the typical step; the gap holds as of power. Intervals that start at a NaN are dropped (energy
/// with stamps at the end: that end at one), and so is energy of more than kHighestReading_w.
///
/// The gap, where none is given, is the larger of 300 s and 3 times the typical step. A log of
/// power that is change-only has none. It is change-only where at most one pair of neighbouring
/// values in twenty is equal and steps are irregular: at least four of them, fewer than half within
/// the larger of 1 s and 2 % of their median, fewer than four in five within a quarter of it. Where
/// values return at every second reading (a, b, a) five times or more, and ten times as often as
/// neighbours are equal, it is enough that fewer than nine in ten steps lie within 1 s or 2 % of
/// the median: in a log of all rows, what often comes back after two rows is often found after one.
///
/// Counter: mean watts between readings whatever the gap; rows with a NaN are passed over. A fall
/// is a restart and its interval is dropped; so is a rise of more than kHighestReading_w. While a
/// counter stands still, less than a tick is drawn: the next rise is spread evenly over the time
/// since the last one. Where that would put two ticks or more on the time of standing still, the
/// device was off: that time has 0 W, and so has time without a rise at the end or before a
/// restart. (A tick: the smallest rise so far; where half of the rises or more came without
/// standing still before them, the largest step of which all readings are multiples.) Intervals
/// longer than an hour (and 1 %, as hourly readings tremble) count in the totals, but neither by
/// hour nor by watts nor by minute, unless readings that are no more than an hour apart tell their
/// hours to within 1 Wh.
class Measuring : public logs::ReadingSink {
 public:
  explicit Measuring(MeasuringOptions options);
  ~Measuring() override;
  void begin(const logs::Meaning& meaning) override;
  void take(std::span<const logs::Reading> readings) override;
  /// After the last reading. To be called once.
  Measurement finish();

 private:
  class Inside;
  MeasuringOptions options_;
  std::unique_ptr<Inside> inside_;
};

}  // namespace wattweek::metering
