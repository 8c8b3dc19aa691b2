#include "wattweek/metering/measuring.hpp"

#include <array>
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

constexpr double kNoValue = std::numeric_limits<double>::quiet_NaN();

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
  /// Readings in portions that stay at hand for one look after the other.
  static constexpr std::size_t kBlock = 512;

  void begin_at(const Reading& reading);
  bool usable(double value) const;
  void take_block(std::span<const Reading> neighbours, std::size_t added);
  void take_energy(std::span<const Reading> neighbours);
  void add_energy(double energy_wh, Microseconds start_us, Microseconds end_us);
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
  std::array<Reading, kBlock + 1> block_{};  // The first is the last one of the block before.
  Microseconds from_us_ = 0;                 // Of all intervals, dropped ones too.
  Microseconds to_us_ = 0;
  std::size_t with_value_ = 0;
};

void Measuring::Inside::begin_at(const Reading& reading) {
  first_ = {reading.at_us, usable(reading.value) ? reading.value : kNoValue};
  sums_.start_at(reading.at_us);
}

bool Measuring::Inside::usable(double value) const { return value >= 0 && value <= highest_; }

void Measuring::Inside::take(std::span<const Reading> readings) {
  if (readings.empty()) return;
  if (!begun_) begin_at(readings.front());
  while (!readings.empty()) {
    const auto some = readings.first(std::min(readings.size(), kBlock));
    readings = readings.subspan(some.size());
    // Before them stands the reading before; of the very first there is none.
    std::size_t end = 1;
    for (const Reading& reading : some) {
      block_[end++] = {reading.at_us, usable(reading.value) ? reading.value : kNoValue};
    }
    take_block(std::span<const Reading>(block_.data(), end).subspan(begun_ ? 0 : 1), some.size());
    begun_ = true;
    block_[0] = block_[end - 1];
  }
}

void Measuring::Inside::take_block(std::span<const Reading> neighbours, std::size_t added) {
  const auto fresh = neighbours.last(added);
  stamps_.see(neighbours);
  for (const Reading& reading : fresh) with_value_ += std::isnan(reading.value) ? 0U : 1U;
  switch (meaning_.kind) {
    case Kind::power:
      change_only_.see(fresh);
      resolution_.see(fresh);
      sieve_.take_held(neighbours);
      break;
    case Kind::energy:
      resolution_.see(fresh);
      take_energy(neighbours);
      break;
    case Kind::counter:
      for (const Reading& reading : fresh) {
        if (!std::isnan(reading.value)) counter_.take(reading);
      }
      break;
  }
}

void Measuring::Inside::take_energy(std::span<const Reading> neighbours) {
  const bool at_start = meaning_.stamps == logs::Stamps::start;
  for (std::size_t i = 1; i < neighbours.size(); ++i) {
    const Reading& from = neighbours[i - 1];
    const Reading& to = neighbours[i];
    add_energy(at_start ? from.value : to.value, from.at_us, to.at_us);
  }
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
    add_energy(block_[0].value, block_[0].at_us, to_us_);
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
  to_us_ = block_[0].at_us;
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
  all.measured.carries_rest = meaning_.kind == Kind::counter;
  if (meaning_.kind != Kind::power) all.measured.changing.clear();
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
