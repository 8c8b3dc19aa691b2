#pragma once
// Intervals that count, added up: by hour, by watts, and in parcels.

#include <algorithm>
#include <limits>

#include "bins.hpp"
#include "interval.hpp"
#include "local_hours.hpp"
#include "noted_units.hpp"
#include "parcels.hpp"
#include "zero_runs.hpp"

namespace wattweek::metering {

class IntervalSums {
 public:
  explicit IntervalSums(const MeasuringOptions& options);
  IntervalSums(const IntervalSums&) = delete;
  IntervalSums& operator=(const IntervalSums&) = delete;

  /// Before all others: the log's first stamp.
  void start_at(logs::Microseconds first_us) {
    parcels_.start_at(first_us);
    zero_runs_.put_aside(first_us, first_us);  // An interval that ends here may come last.
  }

  /// In order of time.
  void add(const Interval& interval) {
    const double seconds = in_seconds(interval.length_us());
    const double joules = seconds * interval.watts;
    add_figures(interval);
    const std::size_t bin = bins::bin_of(interval.watts);
    if (interval.end_us > calm_until_us_) {
      add_across(interval, bin);
    } else {
      add_calm(bin, seconds, joules);
    }
  }
  /// In the totals alone. In order of time.
  void add_to_totals(const Interval& interval);
  /// An interval of which nobody knows yet whether it counts. In order of time.
  void put_aside(const Interval& interval) {
    if (interval.watts == 0) zero_runs_.put_aside(interval.start_us, interval.end_us);
  }
  /// From now on those come, in order of time, that had been put aside and count.
  void settle();

  logs::Microseconds covered_us() const { return covered_us_; }
  ZeroRuns::Run longest_zero() { return zero_runs_.longest(); }
  /// All but the resolution. To be called once, last.
  Measured measured();

 private:
  void add_figures(const Interval& interval) {
    covered_us_ += interval.length_us();
    lowest_w_ = std::min(lowest_w_, interval.watts);
    highest_w_ = std::max(highest_w_, interval.watts);
    if (interval.watts == 0) zero_runs_.add(interval.start_us, interval.end_us);
  }
  void add_calm(std::size_t bin, double seconds, double joules) {
    calm_.seconds += seconds;
    calm_.joules += joules;
    (*calm_bins_)[bin].seconds += seconds;
    (*calm_bins_)[bin].joules += joules;
    parcels_.add(bin, seconds, joules);
  }
  void add_across(const Interval& interval, std::size_t bin);
  Histogram& bins_of(std::uint32_t design) { return design == 0 ? unused_ : in_use_; }
  void turn_to(logs::Microseconds at_us);
  void close_calm();
  Drawn total() const;

  LocalHours hours_;
  NotedUnits noted_;
  Parcels parcels_;
  ZeroRuns zero_runs_;
  // As long as neither the hour nor the cell nor the units in use change, nothing has to be looked
  // up; the sum of this time goes to its hour at once, which also keeps long sums accurate.
  static constexpr logs::Microseconds kNeverCalm_us =
      std::numeric_limits<logs::Microseconds>::min();
  logs::Microseconds calm_until_us_ = kNeverCalm_us;
  Drawn calm_;
  Drawn in_totals_alone_;
  logs::Microseconds covered_us_ = 0;
  double lowest_w_ = std::numeric_limits<double>::infinity();
  double highest_w_ = 0;
  Histogram unused_;  // While no workload is in use.
  Histogram in_use_;
  Histogram* calm_bins_ = &unused_;
};

}  // namespace wattweek::metering
