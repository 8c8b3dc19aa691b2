#include "hole_sieve.hpp"

#include <cmath>
#include <limits>

namespace wattweek::metering {
namespace {

logs::Microseconds in_us(double seconds) {
  constexpr double kLongest_s = 9e12;  // All times that there are.
  return static_cast<logs::Microseconds>(std::llround(std::min(seconds, kLongest_s) * 1e6));
}

}  // namespace

HoleSieve::HoleSieve(IntervalSums& sums, std::optional<double> gap_s)
    : sums_(sums), undecided_(!gap_s), surely_kept_us_(in_us(gap_s.value_or(kLeastGap_s))) {}

void HoleSieve::put_aside(const Interval& interval) {
  sums_.put_aside(interval);
  if (!aside_.empty() && aside_.back().at_us == interval.start_us) {
    aside_.back().value = interval.watts;
  } else {
    aside_.push_back({interval.start_us, interval.watts});
  }
  aside_.push_back({interval.end_us, std::numeric_limits<double>::quiet_NaN()});
}

void HoleSieve::take_held(std::span<const logs::Reading> neighbours) {
  for (std::size_t i = 1; i < neighbours.size(); ++i) {
    const Interval interval{neighbours[i - 1].at_us, neighbours[i].at_us, neighbours[i - 1].value};
    if (!std::isnan(interval.watts)) take(interval);
  }
}

void HoleSieve::settle(double gap_s) {
  surely_kept_us_ = in_us(gap_s);
  undecided_ = false;
  sums_.settle();
}

void HoleSieve::release() {
  while (aside_.size() > 1) {
    const logs::Reading mark = aside_.front();
    aside_.pop_front();
    const Interval interval{mark.at_us, aside_.front().at_us, mark.value};
    if (!std::isnan(mark.value)) take(interval);
  }
  aside_.clear();
}

}  // namespace wattweek::metering
