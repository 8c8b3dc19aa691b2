#include "wattweek/metering/measuring.hpp"

#include <cmath>
#include <limits>

#include "change_only.hpp"
#include "counter_intervals.hpp"
#include "hole_sieve.hpp"
#include "resolution.hpp"
#include "stamps.hpp"

namespace wattweek::metering {
namespace {

using logs::Kind;
using logs::Microseconds;
using logs::Reading;

// What no meter counts to. A reader has dropped what is above; here it is a NaN like others.
constexpr double kHighest_wh = 1e12;

}  // namespace

class Measuring::Inside {
 public:
  Inside(const MeasuringOptions& options, const logs::Meaning& meaning)
      : gap_s_(options.gap_s),
        meaning_(meaning),
        highest_(meaning.kind == Kind::power ? kHighestReading_w : kHighest_wh),
        sums_(options),
        sieve_(sums_, options.gap_s),
        counter_(sums_) {}

  void take(std::span<const Reading> readings);
  Measurement finish();

 private:
  void begin_at(Reading reading);
  void take_power(const Reading& reading);
  void take_energy(const Reading& reading);
  void take_counter(const Reading& reading);
  void add_energy(double energy_wh, Microseconds start_us, Microseconds end_us);
  Reading checked(Reading reading) const;
  /// What was put aside, and the interval of which only one end is in the log.
  void settle(Microseconds typical_us, double gap_s);
  double gap_s(double typical_step_s) const;
  Coverage coverage(double typical_step_s);
  double resolution_w(double typical_step_s) const;

  std::optional<double> gap_s_;
  logs::Meaning meaning_;
  double highest_;
  IntervalSums sums_;
  HoleSieve sieve_;
  CounterIntervals counter_;
  Stamps stamps_;
  ChangeOnly change_only_;
  Resolution resolution_;
  bool begun_ = false;
  Reading first_;
  Reading last_;
  Microseconds from_us_ = 0;  // Of all intervals, dropped ones too.
  Microseconds to_us_ = 0;
  std::size_t with_value_ = 0;
};

Reading Measuring::Inside::checked(Reading reading) const {
  const bool usable = reading.value >= 0 && reading.value <= highest_;
  return {reading.at_us, usable ? reading.value : std::numeric_limits<double>::quiet_NaN()};
}

void Measuring::Inside::begin_at(Reading reading) {
  begun_ = true;
  first_ = reading;
  sums_.start_at(reading.at_us);
}

void Measuring::Inside::take(std::span<const Reading> readings) {
  for (const Reading& given : readings) {
    const Reading reading = checked(given);
    if (begun_) {
      stamps_.step(last_.at_us, reading.at_us);
    } else {
      begin_at(reading);
      last_ = {reading.at_us, std::numeric_limits<double>::quiet_NaN()};
    }
    switch (meaning_.kind) {
      case Kind::power:
        take_power(reading);
        break;
      case Kind::energy:
        take_energy(reading);
        break;
      case Kind::counter:
        take_counter(reading);
        break;
    }
    last_ = reading;
  }
}

void Measuring::Inside::take_power(const Reading& reading) {
  change_only_.see(reading.value);
  if (!std::isnan(last_.value)) sieve_.take({last_.at_us, reading.at_us, last_.value});
  if (std::isnan(reading.value)) return;
  ++with_value_;
  resolution_.see(reading.value);
}

void Measuring::Inside::take_energy(const Reading& reading) {
  if (reading.at_us != first_.at_us) {
    const bool at_start = meaning_.stamps == logs::Stamps::start;
    add_energy(at_start ? last_.value : reading.value, last_.at_us, reading.at_us);
  }
  if (std::isnan(reading.value)) return;
  ++with_value_;
  resolution_.see(reading.value);
}

void Measuring::Inside::take_counter(const Reading& reading) {
  if (std::isnan(reading.value)) return;
  ++with_value_;
  counter_.take(reading);
}

void Measuring::Inside::add_energy(double energy_wh, Microseconds start_us, Microseconds end_us) {
  const Interval interval = drawn_evenly(energy_wh, start_us, end_us);
  if (interval.watts <= kHighestReading_w) sieve_.take(interval);  // A NaN is not.
}

void Measuring::Inside::settle(Microseconds typical_us, double gap_s) {
  counter_.finish();
  sieve_.settle(gap_s);
  const bool open_ended = meaning_.kind == Kind::energy && typical_us > 0;
  const bool at_start = meaning_.stamps == logs::Stamps::start;
  if (open_ended && !at_start) {
    from_us_ -= typical_us;
    add_energy(first_.value, from_us_, first_.at_us);
  }
  sieve_.release();
  if (open_ended && at_start) {
    to_us_ += typical_us;
    add_energy(last_.value, last_.at_us, to_us_);
  }
}

double Measuring::Inside::gap_s(double typical_step_s) const {
  constexpr double kNoGap_s = std::numeric_limits<double>::infinity();
  if (meaning_.kind == Kind::counter) return kNoGap_s;
  if (gap_s_) return *gap_s_;
  return std::max(kLeastGap_s, 3 * typical_step_s);
}

double Measuring::Inside::resolution_w(double typical_step_s) const {
  if (meaning_.kind == Kind::power) return resolution_.step();
  const double tick_wh = meaning_.kind == Kind::counter ? counter_.tick_wh() : resolution_.step();
  return typical_step_s > 0 ? tick_wh * 3600 / typical_step_s : 0;
}

Coverage Measuring::Inside::coverage(double typical_step_s) {
  Coverage coverage;
  coverage.readings = with_value_;
  coverage.first_us = from_us_;
  coverage.last_us = to_us_;
  coverage.longest_step_s = in_seconds(stamps_.longest_us());
  coverage.longest_step_at_us = stamps_.longest_at_us();
  coverage.typical_step_s = typical_step_s;
  coverage.change_only = meaning_.kind == Kind::power && change_only_.holds(stamps_.steps());
  coverage.gap_s = gap_s(typical_step_s);
  if (coverage.change_only && !gap_s_) coverage.gap_s = std::numeric_limits<double>::infinity();
  coverage.restarts = counter_.restarts();
  return coverage;
}

Measurement Measuring::Inside::finish() {
  stamps_.steps().close();
  from_us_ = first_.at_us;
  to_us_ = last_.at_us;
  const double typical_step_s = stamps_.steps().median_s();
  Measurement all;
  all.coverage = coverage(typical_step_s);
  settle(std::llround(typical_step_s * 1e6), all.coverage.gap_s);
  all.coverage.first_us = from_us_;
  all.coverage.last_us = to_us_;
  const Microseconds covered_us = sums_.covered_us();
  // Intervals tile the span: what is not covered was dropped.
  all.coverage.covered_hours = static_cast<double>(covered_us) / 3.6e9;
  all.coverage.dropped_hours = static_cast<double>(to_us_ - from_us_ - covered_us) / 3.6e9;
  const ZeroRuns::Run zero = sums_.longest_zero();
  all.coverage.longest_zero_s = in_seconds(zero.length_us());
  if (zero.length_us() > 0) all.coverage.longest_zero_at_us = zero.start_us;
  all.measured = sums_.measured();
  all.measured.resolution_w = resolution_w(typical_step_s);
  return all;
}

Measuring::Measuring(MeasuringOptions options) : options_(std::move(options)) {}

Measuring::~Measuring() = default;

void Measuring::begin(const logs::Meaning& meaning) {
  inside_ = std::make_unique<Inside>(options_, meaning);
}

void Measuring::take(std::span<const Reading> readings) { inside_->take(readings); }

Measurement Measuring::finish() {
  if (!inside_) begin({});
  return inside_->finish();
}

}  // namespace wattweek::metering
