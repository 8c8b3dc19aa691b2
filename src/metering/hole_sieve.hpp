#pragma once
// Keeps intervals and drops holes. Where the gap follows from the whole log, long intervals wait
// for its end.

#include <deque>
#include <optional>
#include <span>

#include "interval_sums.hpp"

namespace wattweek::metering {

/// The default gap is never shorter.
inline constexpr double kLeastGap_s = 300;

class HoleSieve {
 public:
  HoleSieve(IntervalSums& sums, std::optional<double> gap_s);

  /// In order of time. \pre watts are no NaN
  void take(const Interval& interval) {
    if (interval.length_us() <= surely_kept_us_) {
      sums_.add(interval);
    } else if (undecided_) {
      put_aside(interval);
    }
  }
  /// Power that holds from each of these, which are neighbours, to the next; not from a NaN.
  void take_held(std::span<const logs::Reading> neighbours);
  /// After the last: this is the gap. What comes now, in order of time, comes before `release`
  /// where it is earlier than what was put aside, else after it.
  void settle(double gap_s);
  /// What was put aside and is no longer than the gap counts as well.
  void release();

 private:
  void put_aside(const Interval& interval);

  IntervalSums& sums_;
  bool undecided_;
  logs::Microseconds surely_kept_us_;
  // An interval lasts from its mark to the next one; a NaN marks the end of those that follow one
  // another. A deque, because it gives back what has been settled.
  std::deque<logs::Reading> aside_;
};

}  // namespace wattweek::metering
