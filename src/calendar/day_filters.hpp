#pragma once
// On which governing days windows can hold: all of a window but its hours.

#include <optional>
#include <vector>

#include "bits.hpp"
#include "wattweek/calendar/fold.hpp"

namespace wattweek::calendar {

/// The distinct filters of a fold, and which of them pass on the day at hand and the day before.
class DayFilters {
 public:
  /// The number of the filter of one of a condition's windows; equal filters share a number.
  std::size_t add(const Condition& condition, const model::Window& window);

  /// Moves to a day; cheap where days come one after the other.
  void move_to(model::CivilDay day);

  bool today(std::size_t filter) const { return test_bit(today_, filter); }
  bool yesterday(std::size_t filter) const { return test_bit(yesterday_, filter); }
  /// The same for two days exactly where every window holds at the same times of day.
  const Words& key() const { return key_; }

 private:
  struct Filter {
    const model::Window* window = nullptr;
    const std::vector<model::DateSpan>* except = nullptr;
    const model::Holidays* holidays = nullptr;
    bool reaches_over = false;  // A window of it crosses midnight.

    bool same_as(const Filter& other) const;
    bool passes(model::CivilDay day, unsigned month_bit) const;
  };
  void fill(model::CivilDay day, Words& bits) const;

  std::vector<Filter> filters_;
  std::optional<model::CivilDay> day_;
  Words today_;
  Words yesterday_;
  Words key_;
};

}  // namespace wattweek::calendar
