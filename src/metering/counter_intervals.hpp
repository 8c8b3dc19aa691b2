#pragma once
// A counter's readings into intervals. A counter moves by ticks: while it stands still, less than
// a tick is drawn, and the next rise is spread over the time since the last one.
//
// That is wrong of a device that was off and is switched on: spread evenly, its first rise would
// have moved the counter long before. Where that is so - the part of the rise that would fall on
// the time of standing still is two ticks or more - the counter stood still for want of power: that
// time has 0 W, and the rise is drawn since the reading before. Time without a rise at the end, or
// before a restart, has 0 W too: what it drew is below a tick.
//
// A tick is taken to be the smallest rise so far. Of a device that draws evenly that may be many
// ticks of a fine counter; so where half of the rises or more came without standing still before
// them, it is the largest step of which all readings are multiples.
//
// Energy of an interval of more than an hour is in the totals alone, as nobody knows when it was
// drawn. Readings at most an hour apart tell that nonetheless where all that could have been drawn
// elsewhere is kKnownTick_wh or less: the mean of no hour is wrong by more than that.

#include <limits>

#include "interval_sums.hpp"
#include "resolution.hpp"

namespace wattweek::metering {

class CounterIntervals {
 public:
  static constexpr double kKnownTick_wh = 1;

  explicit CounterIntervals(IntervalSums& sums) : sums_(sums) { shown_.see(0); }

  /// In order of time. \pre a value
  void take(const logs::Reading& reading);
  /// After the last.
  void finish() { stand_still(); }

  std::size_t restarts() const { return restarts_; }
  /// Wh; 0 where it never rose.
  double tick_wh() const { return ticks_.step(); }

 private:
  void begin_at(const logs::Reading& reading);
  void step_to(const logs::Reading& reading);
  void fall(const logs::Reading& reading);
  void rise(const logs::Reading& reading);
  double tick_so_far_wh() const;
  bool stood_still(const logs::Reading& reading) const;
  void stand_still();
  void add(const Interval& interval, double unsure_wh);

  IntervalSums& sums_;
  Resolution ticks_;  // Of rises.
  Resolution shown_;  // Of readings, from zero.
  bool begun_ = false;
  logs::Reading since_;  // The last rise, or the begin.
  logs::Reading last_;
  logs::Microseconds longest_step_us_ = 0;  // Since then.
  double smallest_rise_wh_ = std::numeric_limits<double>::infinity();
  std::uint64_t rises_ = 0;
  std::uint64_t rises_at_once_ = 0;  // Without standing still before.
  std::size_t restarts_ = 0;
};

}  // namespace wattweek::metering
