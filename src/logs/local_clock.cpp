#include "local_clock.hpp"

#include <algorithm>
#include <iterator>
#include <limits>
#include <utility>

#include "stamps.hpp"

namespace wattweek::logs {
namespace {

constexpr Microseconds kEver = std::numeric_limits<Microseconds>::max() / 4;
// No zone has changed its offset by more.
constexpr Microseconds kWidestChange = kDay + kDay / 12;

}  // namespace

Microseconds utc_offset_at(const calendar::ZoneRules& zone, Microseconds at_us) {
  Microseconds offset = zone.first_utc_offset.count() * kSecond;
  for (const calendar::OffsetChange& change : zone.changes) {
    if (change.at.time_since_epoch().count() * kSecond > at_us) break;
    offset = change.utc_offset.count() * kSecond;
  }
  return offset;
}

LocalClock::LocalClock(const calendar::ZoneRules& zone, bool newest_first, Hours written_once)
    : newest_first_(newest_first), written_once_(std::move(written_once)) {
  Microseconds from = -kEver;
  Microseconds offset = zone.first_utc_offset.count() * kSecond;
  for (const calendar::OffsetChange& change : zone.changes) {
    const Microseconds at = change.at.time_since_epoch().count() * kSecond;
    stretches_.push_back({from, at, offset});
    from = at;
    offset = change.utc_offset.count() * kSecond;
  }
  stretches_.push_back({from, kEver, offset});
}

std::optional<Microseconds> LocalClock::at(Microseconds local_us) {
  if (local_us < unambiguous_from_us_ || local_us >= unambiguous_to_us_) {
    const auto behind =
        std::partition_point(stretches_.begin(), stretches_.end(),
                             [&](const Stretch& s) { return s.to_us + kWidestChange <= local_us; });
    std::optional<Microseconds> first;
    for (auto s = behind; s != stretches_.end() && s->from_us - kWidestChange <= local_us; ++s) {
      if (!s->shows(local_us)) continue;
      if (first) return last_ = chosen(*first, local_us - s->offset_us, s->from_us);
      first = local_us - s->offset_us;
      current_ = static_cast<std::size_t>(s - stretches_.begin());
    }
    if (!first) return std::nullopt;
    const Stretch& current = stretches_[current_];
    unambiguous_from_us_ = current.from_us + current.offset_us + kWidestChange;
    unambiguous_to_us_ = current.to_us + current.offset_us - kWidestChange;
    return last_ = first;
  }
  return last_ = local_us - stretches_[current_].offset_us;
}

Microseconds LocalClock::chosen(Microseconds first, Microseconds second, Microseconds changed_us) {
  const bool is_first = written_once_.count(changed_us) > 0 || is_first_pass(first, second);
  (is_first ? with_first_pass_ : with_second_pass_).insert(changed_us);
  return is_first ? first : second;
}

// The pass that goes on from the row before. An hour that is written twice in the same clock times
// is the two passes.
bool LocalClock::is_first_pass(Microseconds first, Microseconds second) const {
  if (!last_) return true;
  if (newest_first_) return second >= *last_ && first <= *last_;
  return first > *last_ || second < *last_;
}

LocalClock::Hours LocalClock::without_first_pass() const {
  Hours hours;
  std::set_difference(with_second_pass_.begin(), with_second_pass_.end(), with_first_pass_.begin(),
                      with_first_pass_.end(), std::inserter(hours, hours.end()));
  return hours;
}

}  // namespace wattweek::logs
