#pragma once
// When readings came: how many, from when to when, how far apart.

#include <span>

#include "interval.hpp"
#include "step_lengths.hpp"

namespace wattweek::metering {

class Stamps {
 public:
  /// The steps between these, which are neighbours in order of time.
  void see(std::span<const logs::Reading> neighbours) {
    for (std::size_t i = 1; i < neighbours.size(); ++i) {
      const logs::Microseconds step_us = neighbours[i].at_us - neighbours[i - 1].at_us;
      steps_.add(step_us);
      if (step_us > longest_us_) {
        longest_us_ = step_us;
        longest_at_us_ = neighbours[i - 1].at_us;
      }
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
