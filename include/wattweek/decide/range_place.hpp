#pragma once
// Where in a study a range stands, for those who say it in words.

#include <cstddef>

namespace wattweek::decide {

/// What a range is of. What `of` and `index` of its place count is said behind each.
enum class RangeKind {
  household,
  discount_rate,
  price_rise,
  tax,
  standing_per_day,
  standing_per_month,
  minimum_bill,
  band_price,   ///< of: band
  block_price,  ///< of: block
  compute,      ///< of: workload
  share,        ///< of: workload, index: use
  purchase,     ///< of: candidate
  resale,       ///< of: candidate
  later_cost,   ///< of: candidate, index: later cost
  off_w,        ///< From here on of: candidate, device: one that has the profile; here: shut down.
  sleep_w,
  idle_w,
  busy_w,
  max_w,
  capacity,
  group_w,            ///< index: group
  increment,          ///< index: workload; for each unit
  increment_first,    ///< index: workload; for the first unit
  increment_further,  ///< index: workload; for each further unit
  increment_load,     ///< index: workload; in load
  meter_scale,        ///< of: meter
};

/// The place of a range; of one that several devices share, the first.
struct RangePlace {
  RangeKind kind = RangeKind::household;
  std::size_t of = 0;
  std::size_t index = 0;
  std::size_t device = 0;

  friend bool operator==(const RangePlace&, const RangePlace&) = default;
};

}  // namespace wattweek::decide
