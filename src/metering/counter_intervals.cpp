#include "counter_intervals.hpp"

namespace wattweek::metering {
namespace {

// Readings in kWh are binary fractions: a tick of 1 Wh may be a little more or less.
constexpr double kAlmost = 1 - 1e-6;

// An hour; readings that come hourly tremble.
constexpr logs::Microseconds kHourly_us = kHour_us + kHour_us / 100;

}  // namespace

void CounterIntervals::begin_at(const logs::Reading& reading) {
  begun_ = true;
  since_ = reading;
  last_ = reading;
  longest_step_us_ = 0;
}

void CounterIntervals::take(const logs::Reading& reading) {
  shown_.see(reading.value);
  if (!begun_) {
    ticks_.see(reading.value);
    begin_at(reading);
  } else if (reading.value < last_.value) {
    fall(reading);
  } else if (reading.value > last_.value) {
    rise(reading);
  } else {
    step_to(reading);
  }
}

void CounterIntervals::step_to(const logs::Reading& reading) {
  longest_step_us_ = std::max(longest_step_us_, reading.at_us - last_.at_us);
  last_ = reading;
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
  ++rises_;
  if (last_.at_us == since_.at_us) ++rises_at_once_;
  if (stood_still(reading)) stand_still();
  step_to(reading);
  const double rise_wh = reading.value - since_.value;
  add(drawn_evenly(rise_wh, since_.at_us, reading.at_us), rise_wh);
  begin_at(reading);
}

double CounterIntervals::tick_so_far_wh() const {
  const bool fine = rises_ > 0 && 2 * rises_at_once_ >= rises_;
  return fine ? std::min(shown_.step(), smallest_rise_wh_) : smallest_rise_wh_;
}

bool CounterIntervals::stood_still(const logs::Reading& reading) const {
  const double share = static_cast<double>(last_.at_us - since_.at_us) /
                       static_cast<double>(reading.at_us - since_.at_us);
  return share * (reading.value - since_.value) >= 2 * tick_so_far_wh() * kAlmost;
}

void CounterIntervals::stand_still() {
  if (last_.at_us == since_.at_us) return;
  add({since_.at_us, last_.at_us, 0}, tick_so_far_wh());
  since_ = last_;
  longest_step_us_ = 0;
}

void CounterIntervals::add(const Interval& interval, double unsure_wh) {
  if (interval.watts > kHighestReading_w) return;
  const bool read_hourly = longest_step_us_ <= kHourly_us && unsure_wh * kAlmost <= kKnownTick_wh;
  if (interval.length_us() <= kHourly_us || read_hourly) {
    sums_.add(interval);
  } else {
    sums_.add_to_totals(interval);
  }
}

}  // namespace wattweek::metering
