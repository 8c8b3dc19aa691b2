#include "day_filters.hpp"

#include <algorithm>

namespace wattweek::calendar {

using std::chrono::days;

namespace {

std::chrono::weekday weekday_as_counted(model::CivilDay day, const model::Holidays* holidays) {
  if (holidays != nullptr && holidays->count_as &&
      std::binary_search(holidays->dates.begin(), holidays->dates.end(), day)) {
    return *holidays->count_as;
  }
  return std::chrono::weekday{day};
}

bool crosses_midnight(const model::Window& window) {
  return std::any_of(window.hours.begin(), window.hours.end(),
                     [](const model::HourSpan& span) { return span.crosses_midnight(); });
}

}  // namespace

bool DayFilters::Filter::same_as(const Filter& other) const {
  return window->days == other.window->days && window->months == other.window->months &&
         window->dates == other.window->dates && *except == *other.except &&
         holidays == other.holidays;
}

bool DayFilters::Filter::passes(model::CivilDay day, unsigned month_bit) const {
  if (!window->months[month_bit]) return false;
  if (window->dates && !window->dates->contains(day)) return false;
  if (!window->days[model::weekday_bit(weekday_as_counted(day, holidays))]) return false;
  return std::none_of(except->begin(), except->end(),
                      [day](const model::DateSpan& span) { return span.contains(day); });
}

std::size_t DayFilters::add(const Condition& condition, const model::Window& window) {
  const Filter filter{&window, &condition.except, condition.holidays, crosses_midnight(window)};
  const auto same = std::find_if(filters_.begin(), filters_.end(),
                                 [&](const Filter& known) { return known.same_as(filter); });
  if (same == filters_.end()) {
    filters_.push_back(filter);
    return filters_.size() - 1;
  }
  same->reaches_over = same->reaches_over || filter.reaches_over;
  return static_cast<std::size_t>(same - filters_.begin());
}

void DayFilters::move_to(model::CivilDay day) {
  if (day_ == day) return;
  if (day_ && *day_ + days{1} == day) {
    yesterday_.swap(today_);
  } else {
    fill(day - days{1}, yesterday_);
  }
  fill(day, today_);
  day_ = day;
  key_ = today_;
  key_.resize(2 * today_.size(), 0);
  // Whether a filter passed yesterday matters only where one of its windows reaches into today.
  for (std::size_t f = 0; f < filters_.size(); ++f) {
    if (filters_[f].reaches_over && yesterday(f)) set_bit(&key_[today_.size()], f);
  }
}

void DayFilters::fill(model::CivilDay day, Words& bits) const {
  bits.assign(words_for(filters_.size()), 0);
  const std::chrono::year_month_day date{day};
  const unsigned month_bit = static_cast<unsigned>(date.month()) - 1;
  for (std::size_t f = 0; f < filters_.size(); ++f) {
    if (filters_[f].passes(day, month_bit)) set_bit(bits.data(), f);
  }
}

}  // namespace wattweek::calendar
