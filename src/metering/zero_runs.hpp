#pragma once
// The longest time at exactly 0 W. Of an interval that was put aside nobody knows yet whether it
// counts; the runs that it might join are remembered until then.

#include <limits>
#include <vector>

#include "interval.hpp"

namespace wattweek::metering {

class ZeroRuns {
 public:
  struct Run {
    logs::Microseconds start_us = 0;
    logs::Microseconds end_us = 0;

    logs::Microseconds length_us() const { return end_us - start_us; }
  };

  /// In order of time.
  void add(logs::Microseconds start_us, logs::Microseconds end_us) {
    if (start_us != run_.end_us) turn_to(start_us);
    run_.end_us = end_us;
  }
  /// In the same order.
  void put_aside(logs::Microseconds start_us, logs::Microseconds end_us);
  /// From now on come, in order of time, those that had been put aside and count.
  void settle();
  /// The longest, of equal ones the first. To be called once, last.
  Run longest();

 private:
  void turn_to(logs::Microseconds start_us);
  void close();

  // No time is earlier: nothing follows on a run that is not there.
  static constexpr logs::Microseconds kNever_us = std::numeric_limits<logs::Microseconds>::min();

  Run run_{kNever_us, kNever_us};
  bool may_join_ = false;  // The run touches an interval that was put aside.
  bool settling_ = false;
  logs::Microseconds aside_end_us_ = kNever_us;
  Run longest_;
  std::vector<Run> parts_;
};

}  // namespace wattweek::metering
