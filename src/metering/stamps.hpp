#pragma once
// When readings came: how many, from when to when, how far apart.

#include "interval.hpp"
#include "step_lengths.hpp"

namespace wattweek::metering {

class Stamps {
 public:
  /// In order of time; each but the first.
  void step(logs::Microseconds from_us, logs::Microseconds to_us) {
    const logs::Microseconds step_us = to_us - from_us;
    steps_.add(step_us);
    if (step_us > longest_us_) {
      longest_us_ = step_us;
      longest_at_us_ = from_us;
    }
  }

  StepLengths& steps() { return steps_; }
  logs::Microseconds longest_us() const { return longest_us_; }
  logs::Microseconds longest_at_us() const { return longest_at_us_; }

 private:
  StepLengths steps_;
  logs::Microseconds longest_us_ = 0;
  logs::Microseconds longest_at_us_ = 0;
};

}  // namespace wattweek::metering
