#pragma once
// Clock times without zone into moments.

#include <optional>
#include <set>
#include <vector>

#include "wattweek/calendar/zone.hpp"
#include "wattweek/logs/log.hpp"

namespace wattweek::logs {

/// How far the clocks of a zone were ahead of UTC.
Microseconds utc_offset_at(const calendar::ZoneRules& zone, Microseconds at_us);

/// Turns what the clocks showed, row after row, into moments. In an hour that they showed twice
/// the file's order decides, the first pass where it does not; an hour that they skipped has no
/// moments.
class LocalClock {
 public:
  /// Hours that the clocks showed twice, each by the moment at which its second pass began.
  using Hours = std::set<Microseconds>;

  /// `newest_first`: the file goes back in time. `written_once`: hours of which it has one pass,
  /// the first. Of a file that goes on in time they need not be known.
  LocalClock(const calendar::ZoneRules& zone, bool newest_first, Hours written_once = {});

  /// The moment at which the clocks showed `local_us`; nothing where they never did.
  std::optional<Microseconds> at(Microseconds local_us);

  /// Hours of which only the second pass was met: to be read again as written once.
  Hours without_first_pass() const;

  /// The row before was at this moment.
  void went_on_to(Microseconds at_us) { last_ = at_us; }

 private:
  // A time over which the offset is the same, as the clocks show it.
  struct Stretch {
    Microseconds from_us;  // In UTC, `to_us` excluded.
    Microseconds to_us;
    Microseconds offset_us;

    bool shows(Microseconds local_us) const {
      return local_us - offset_us >= from_us && local_us - offset_us < to_us;
    }
  };

  Microseconds chosen(Microseconds first, Microseconds second, Microseconds changed_us);
  bool is_first_pass(Microseconds first, Microseconds second) const;

  std::vector<Stretch> stretches_;
  bool newest_first_;
  Hours written_once_;
  Hours with_first_pass_;
  Hours with_second_pass_;
  std::size_t current_ = 0;
  Microseconds unambiguous_from_us_ = 0;  // Clock times in [from, to) are of `current_` alone.
  Microseconds unambiguous_to_us_ = 0;
  std::optional<Microseconds> last_;
};

}  // namespace wattweek::logs
