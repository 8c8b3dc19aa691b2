#include "week_classes.hpp"

#include <algorithm>
#include <map>
#include <utility>

namespace wattweek::calendar {

namespace {

constexpr std::size_t kHoursOfDay = 24;

// Each once, however many devices share it.
std::vector<const model::WeekOfWatts*> weeks_of(const model::Study& study) {
  std::vector<const model::WeekOfWatts*> weeks;
  for (const model::Candidate& candidate : study.candidates) {
    for (const model::Device& device : candidate.devices) {
      if (!device.profile->week) continue;
      const model::WeekOfWatts* week = &*device.profile->week;
      const bool is_known = std::any_of(weeks.begin(), weeks.end(),
                                        [week](const auto* known) { return *known == *week; });
      if (!is_known) weeks.push_back(week);
    }
  }
  return weeks;
}

}  // namespace

WeekClasses::WeekClasses(const model::Study& study) {
  const std::vector<const model::WeekOfWatts*> weeks = weeks_of(study);
  if (weeks.empty()) return;
  std::map<std::vector<units::Power>, std::uint32_t> known;
  for (std::size_t hour = 0; hour < model::kHoursOfWeek; ++hour) {
    std::vector<units::Power> watts;
    for (const model::WeekOfWatts* week : weeks) watts.push_back((*week)[hour]);
    const auto next = static_cast<std::uint32_t>(known.size());
    const auto [entry, is_new] = known.try_emplace(std::move(watts), next);
    if (is_new) first_hour_.push_back(static_cast<std::uint32_t>(hour));
    class_of_[hour] = entry->second;
  }
  for (std::size_t digit = 0; (first_hour_.size() - 1) >> digit != 0; ++digit) add_digit(digit);
}

// The hours whose class has the digit, a window for each weekday.
void WeekClasses::add_digit(std::size_t digit) {
  auto& windows = windows_.emplace_back();
  for (std::size_t day = 0; day < model::kEveryDay.size(); ++day) {
    model::Window window;
    window.days = model::WeekdaySet{1U << day};
    window.hours.clear();
    for (std::size_t hour = 0; hour < kHoursOfDay; ++hour) {
      if ((class_of_[kHoursOfDay * day + hour] >> digit & 1U) == 0) continue;
      const int start_min = static_cast<int>(hour) * 60;
      window.hours.push_back({start_min, start_min + 60});
    }
    if (!window.hours.empty()) windows.push_back(std::move(window));
  }
}

void WeekClasses::add_to(FoldInput& input) {
  first_condition_ = input.conditions.size();
  for (const std::vector<model::Window>& windows : windows_) {
    Condition& condition = input.conditions.emplace_back();
    for (const model::Window& window : windows) condition.windows.push_back(&window);
  }
}

std::vector<std::uint32_t> WeekClasses::hours_of(const Fold& folded) const {
  if (first_hour_.empty()) return {};
  std::vector<std::uint32_t> hours;
  hours.reserve(folded.situations());
  for (std::size_t situation = 0; situation < folded.situations(); ++situation) {
    std::size_t number = 0;
    for (std::size_t digit = 0; digit < windows_.size(); ++digit) {
      if (folded.holds(situation, first_condition_ + digit)) number |= std::size_t{1} << digit;
    }
    hours.push_back(first_hour_[number]);
  }
  return hours;
}

}  // namespace wattweek::calendar
