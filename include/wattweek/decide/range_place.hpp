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
  standing_charge,
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
  group_w,      ///< index: group
  increment,    ///< index: workload
  meter_scale,  ///< of: meter
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
