#include "counter_intervals.hpp"

namespace wattweek::metering {

void CounterIntervals::begin_at(const logs::Reading& reading) {
  begun_ = true;
  since_ = reading;
  last_ = reading;
  longest_step_us_ = 0;
}

void CounterIntervals::take(const logs::Reading& reading) {
  if (!begun_) {
    ticks_.see(reading.value);
    begin_at(reading);
  } else if (reading.value < last_.value) {
    fall(reading);
  } else {
    longest_step_us_ = std::max(longest_step_us_, reading.at_us - last_.at_us);
    if (reading.value > last_.value) {
      rise(reading);
    } else {
      last_ = reading;
    }
  }
}

void CounterIntervals::fall(const logs::Reading& reading) {
  stand_still();
  ++restarts_;
  ticks_.forget_last();
  ticks_.see(reading.value);
  begin_at(reading);
}

void CounterIntervals::rise(const logs::Reading& reading) {
  ticks_.see(reading.value);
  smallest_rise_wh_ = std::min(smallest_rise_wh_, reading.value - since_.value);
  if (stood_still(reading)) stand_still();
  const double rise_wh = reading.value - since_.value;
  add(drawn_evenly(rise_wh, since_.at_us, reading.at_us), rise_wh);
  begin_at(reading);
}

bool CounterIntervals::stood_still(const logs::Reading& reading) const {
  const double share = static_cast<double>(last_.at_us - since_.at_us) /
                       static_cast<double>(reading.at_us - since_.at_us);
  return share * (reading.value - since_.value) >= 2 * smallest_rise_wh_;
}

void CounterIntervals::stand_still() {
  if (last_.at_us == since_.at_us) return;
  add({since_.at_us, last_.at_us, 0}, smallest_rise_wh_);
  since_ = last_;
}

void CounterIntervals::add(const Interval& interval, double unsure_wh) {
  if (interval.watts > kHighestReading_w) return;
  const bool read_hourly = longest_step_us_ <= kHour_us && unsure_wh <= kKnownTick_wh;
  if (interval.length_us() <= kHour_us || read_hourly) {
    sums_.add(interval);
  } else {
    sums_.add_to_totals(interval);
  }
}

}  // namespace wattweek::metering
