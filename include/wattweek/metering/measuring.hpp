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
/// the typical step. Counter: mean watts between readings whatever the gap; a fall is a restart and
/// its interval is dropped; so is a rise of more than kHighestReading_w; intervals longer than an
/// hour count in the totals, but neither by hour nor by watts nor by minute. Intervals that start
/// at a NaN are dropped (energy with stamps at the end: that end at one; counters: such rows are
/// passed over).
///
/// The gap, where none is given, is the larger of 300 s and 3 times the typical step.
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
