#pragma once
// Time and energy by hour of the local clock.

#include "interval.hpp"
#include "wattweek/calendar/zone.hpp"
#include "wattweek/metering/measured.hpp"

namespace wattweek::metering {

class LocalHours {
 public:
  explicit LocalHours(calendar::ZoneRules zone) : zone_(std::move(zone)) {}

  /// Turns to the hour of this instant; says when it ends, or when the UTC offset changes.
  logs::Microseconds turn_to(logs::Microseconds at_us);
  /// To the hour turned to.
  void add(const Drawn& drawn);
  /// Each hour gets its part. Turns to the last of them.
  void add_split(const Interval& interval);

  std::int64_t first_hour() const { return first_hour_; }
  const std::vector<Drawn>& hours() const { return hours_; }

 private:
  calendar::ZoneRules zone_;
  std::int64_t first_hour_ = 0;
  std::int64_t hour_ = 0;
  std::vector<Drawn> hours_;
};

}  // namespace wattweek::metering
