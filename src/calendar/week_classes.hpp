#pragma once
// The hours of the local week that profiles with a `week` tell apart, as conditions of a fold.

#include <array>
#include <cstdint>
#include <vector>

#include "wattweek/calendar/fold.hpp"
#include "wattweek/model/study.hpp"

namespace wattweek::calendar {

/// Two hours are of one class where every profile of the study with a `week` draws the same in
/// both. A class has a number, and each binary digit of it becomes a condition: eight conditions
/// tell 168 hours apart. Weekdays are the calendar's; a holiday is none of another.
class WeekClasses {
 public:
  explicit WeekClasses(const model::Study& study);
  WeekClasses(const WeekClasses&) = delete;  // The conditions point into it.
  WeekClasses& operator=(const WeekClasses&) = delete;

  /// Appends the conditions, none where no profile has a `week` or all hours are of one class.
  /// They point into this object, which must outlive the fold.
  void add_to(FoldInput& input);

  /// By situation: the first hour of its class. Empty where no profile has a `week`.
  std::vector<std::uint32_t> hours_of(const Fold& folded) const;

 private:
  void add_digit(std::size_t digit);

  std::array<std::uint32_t, model::kHoursOfWeek> class_of_{};  // By hour.
  std::vector<std::uint32_t> first_hour_;                      // By class.
  std::vector<std::vector<model::Window>> windows_;            // By digit.
  std::size_t first_condition_ = 0;
};

}  // namespace wattweek::calendar
