#include <algorithm>
#include <bitset>
#include <map>

#include "wattweek/decide/shift.hpp"

namespace wattweek::decide {
namespace {

constexpr int kDayMin = 1440;

bool is_whole_day(const model::HourSpan& span) { return span == model::HourSpan{}; }

bool has_hours(const model::Window& window) {
  return !std::all_of(window.hours.begin(), window.hours.end(), is_whole_day);
}

/// Do two of its spans share a minute of the clock, be it on different days?
bool overlaps(const model::Window& window) {
  std::bitset<kDayMin> taken;
  for (const model::HourSpan& span : window.hours) {
    for (int i = 0; i < span.length_min(); ++i) {
      const auto minute = static_cast<std::size_t>((span.start_min + i) % kDayMin);
      if (taken[minute]) return true;
      taken.set(minute);
    }
  }
  return false;
}

model::WeekdaySet later(const model::WeekdaySet& days, int count) {
  model::WeekdaySet moved;
  for (std::size_t day = 0; day < 7; ++day) {
    moved[(day + static_cast<std::size_t>(count)) % 7] = days[day];
  }
  return moved;
}

/// Adds the span as it is from `start` on. A whole day that starts later has to end when it began:
/// its part after midnight is carried by a span that starts a minute before midnight, so that both
/// parts belong to one day; what is covered twice counts once.
void add_span(std::vector<model::HourSpan>& hours, int start, int length) {
  const int end = start + length;
  if (end <= kDayMin) {
    hours.push_back({start, end});
  } else if (length < kDayMin) {
    hours.push_back({start, end - kDayMin});
  } else {
    hours.push_back({start, kDayMin});
    hours.push_back({kDayMin - 1, start});
  }
}

bool starts_earlier(const model::HourSpan& a, const model::HourSpan& b) {
  return a.start_min < b.start_min;
}

/// A window for each number of midnights that starts pass; one where days do not matter.
std::vector<model::Window> moved(const model::Window& window, int hours) {
  std::map<unsigned long, model::Window> by_days;
  for (const model::HourSpan& span : window.hours) {
    const int start = span.start_min + hours * 60;
    const model::WeekdaySet days = later(window.days, start / kDayMin % 7);
    const auto [entry, is_new] = by_days.try_emplace(days.to_ulong(), window);
    if (is_new) entry->second.hours.clear();
    entry->second.days = days;
    add_span(entry->second.hours, start % kDayMin, span.length_min());
  }
  std::vector<model::Window> windows;
  for (auto& [days, each] : by_days) {
    std::sort(each.hours.begin(), each.hours.end(), starts_earlier);
    windows.push_back(std::move(each));
  }
  return windows;
}

}  // namespace

Movable movable(const model::Workload& workload) {
  const auto& uses = workload.uses;
  if (std::none_of(uses.begin(), uses.end(),
                   [](const model::Use& use) { return has_hours(use.window); })) {
    return Movable::all_day;
  }
  const bool torn = std::any_of(uses.begin(), uses.end(), [](const model::Use& use) {
    return !use.window.days.all() && overlaps(use.window);
  });
  return torn ? Movable::overlaps : Movable::yes;
}

model::Workload moved(const model::Workload& workload, int hours) {
  model::Workload result = workload;
  result.uses.clear();
  for (const model::Use& use : workload.uses) {
    for (model::Window& window : moved(use.window, hours)) {
      result.uses.push_back(use);
      result.uses.back().window = std::move(window);
    }
  }
  return result;
}

}  // namespace wattweek::decide
