#include "local_hours.hpp"

#include <algorithm>
#include <limits>

namespace wattweek::metering {
namespace {

using logs::Microseconds;

Microseconds in_us(std::chrono::seconds s) { return s.count() * kSecond_us; }

}  // namespace

Microseconds LocalHours::turn_to(Microseconds at_us) {
  const auto next = std::upper_bound(
      zone_.changes.begin(), zone_.changes.end(), at_us,
      [](Microseconds us, const auto& change) { return us < in_us(change.at.time_since_epoch()); });
  const bool before_all = next == zone_.changes.begin();
  const Microseconds offset_us =
      in_us(before_all ? zone_.first_utc_offset : std::prev(next)->utc_offset);
  hour_ = floor_of(at_us + offset_us, kHour_us);
  const Microseconds hour_end_us = (hour_ + 1) * kHour_us - offset_us;
  if (next == zone_.changes.end()) return hour_end_us;
  return std::min(hour_end_us, in_us(next->at.time_since_epoch()));
}

void LocalHours::add(const Drawn& drawn) {
  if (hours_.empty()) first_hour_ = hour_;
  if (hour_ < first_hour_) {
    hours_.insert(hours_.begin(), static_cast<std::size_t>(first_hour_ - hour_), Drawn{});
    first_hour_ = hour_;
  }
  const auto at = static_cast<std::size_t>(hour_ - first_hour_);
  if (at >= hours_.size()) hours_.resize(at + 1);
  hours_[at].seconds += drawn.seconds;
  hours_[at].joules += drawn.joules;
}

void LocalHours::add_split(const Interval& interval) {
  for (Microseconds from_us = interval.start_us; from_us < interval.end_us;) {
    const Microseconds to_us = std::min(turn_to(from_us), interval.end_us);
    const double seconds = in_seconds(to_us - from_us);
    add({seconds, seconds * interval.watts});
    from_us = to_us;
  }
}

}  // namespace wattweek::metering
