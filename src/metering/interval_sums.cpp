#include "interval_sums.hpp"

namespace wattweek::metering {

using logs::Microseconds;

IntervalSums::IntervalSums(const MeasuringOptions& options)
    : hours_(options.zone),
      noted_(options.activity),
      unused_(bins::bin_of(kHighestReading_w) + 1),
      in_use_(unused_.size()) {}

void IntervalSums::close_calm() {
  if (calm_.seconds > 0) hours_.add(calm_);
  calm_ = {};
}

void IntervalSums::turn_to(Microseconds at_us) {
  close_calm();
  const Microseconds hour_end_us = hours_.turn_to(at_us);
  const Microseconds piece_end_us = noted_.turn_to(at_us);
  const Microseconds cell_end_us = parcels_.turn_to(at_us, noted_.design());
  calm_until_us_ = std::min({hour_end_us, piece_end_us, cell_end_us});
  calm_bins_ = &bins_of(noted_.design());
}

void IntervalSums::add_across(const Interval& interval, std::size_t bin) {
  if (interval.start_us >= calm_until_us_) turn_to(interval.start_us);
  const double seconds = in_seconds(interval.length_us());
  const double joules = seconds * interval.watts;
  if (interval.end_us <= calm_until_us_) {
    add_calm(bin, seconds, joules);
    return;
  }
  const std::uint32_t design = noted_.mean_design(interval.start_us, interval.end_us);
  parcels_.turn_to(interval.start_us, design);
  parcels_.add(bin, seconds, joules);
  bins_of(design)[bin].seconds += seconds;
  bins_of(design)[bin].joules += joules;
  close_calm();
  hours_.add_split(interval);
  calm_until_us_ = kNeverCalm_us;
}

void IntervalSums::add_to_totals(const Interval& interval) {
  add_figures(interval);
  const double seconds = in_seconds(interval.length_us());
  in_totals_alone_.seconds += seconds;
  in_totals_alone_.joules += seconds * interval.watts;
}

void IntervalSums::settle() {
  zero_runs_.settle();
  close_calm();
  calm_until_us_ = kNeverCalm_us;
}

Drawn IntervalSums::total() const {
  Drawn sum = in_totals_alone_;
  for (const Drawn& hour : hours_.hours()) sum.joules += hour.joules;
  sum.seconds = in_seconds(covered_us_);
  return sum;
}

Measured IntervalSums::measured() {
  close_calm();
  Measured all;
  all.kept = total();
  if (covered_us_ > 0) all.lowest_w = lowest_w_;
  all.highest_w = highest_w_;
  all.first_hour = hours_.first_hour();
  all.hours = hours_.hours();
  all.histogram = unused_;
  for (std::size_t bin = 0; bin < in_use_.size(); ++bin) {
    all.histogram[bin].seconds += in_use_[bin].seconds;
    all.histogram[bin].joules += in_use_[bin].joules;
  }
  while (!all.histogram.empty() && all.histogram.back().seconds <= 0) all.histogram.pop_back();
  all.unused.assign(unused_.begin(),
                    unused_.begin() + static_cast<std::ptrdiff_t>(all.histogram.size()));
  all.parcel_seconds = parcels_.parcel_seconds();
  all.parcels = parcels_.in_order();
  all.designs = noted_.designs();
  all.changing = noted_.changing();
  return all;
}

}  // namespace wattweek::metering
