#include "wattweek/calendar/zone.hpp"

#include <algorithm>
#include <array>
#include <cstdio>

namespace wattweek::calendar {

using std::chrono::seconds;

namespace {

constexpr LocalTime shown(Instant instant, seconds utc_offset) {
  return LocalTime{instant.time_since_epoch() + utc_offset};
}

constexpr Instant instant_of(LocalTime local, seconds utc_offset) {
  return Instant{local.time_since_epoch() - utc_offset};
}

}  // namespace

LocalTime local_time(const ZoneRules& zone, Instant instant) {
  const auto later = std::upper_bound(zone.changes.begin(), zone.changes.end(), instant,
                                      [](Instant i, const OffsetChange& c) { return i < c.at; });
  const seconds offset =
      later == zone.changes.begin() ? zone.first_utc_offset : std::prev(later)->utc_offset;
  return shown(instant, offset);
}

Instant first_instant(const ZoneRules& zone, model::CivilDay day) {
  const LocalTime midnight{day};
  Instant earliest = Instant::min();
  seconds offset = zone.first_utc_offset;
  for (const OffsetChange& change : zone.changes) {
    if (shown(change.at, offset) > midnight) break;  // The clock reaches midnight before.
    earliest = change.at;
    offset = change.utc_offset;
  }
  return std::max(earliest, instant_of(midnight, offset));
}

std::string to_text(LocalTime time) {
  const auto day = std::chrono::floor<std::chrono::days>(time);
  const std::chrono::hh_mm_ss clock{time - day};
  std::array<char, 16> text{};
  std::snprintf(text.data(), text.size(),
                clock.seconds().count() == 0 ? " %02d:%02d" : " %02d:%02d:%02d",
                static_cast<int>(clock.hours().count()), static_cast<int>(clock.minutes().count()),
                static_cast<int>(clock.seconds().count()));
  return to_text(day) + text.data();
}

std::string to_text(model::CivilDay day) {
  const std::chrono::year_month_day date{day};
  std::array<char, 16> text{};
  std::snprintf(text.data(), text.size(), "-%02u", static_cast<unsigned>(date.day()));
  return to_text(date.year() / date.month()) + text.data();
}

std::string to_text(std::chrono::year_month month) {
  std::array<char, 32> text{};
  std::snprintf(text.data(), text.size(), "%04d-%02u", static_cast<int>(month.year()),
                static_cast<unsigned>(month.month()));
  return text.data();
}

model::CivilDay first_day(std::chrono::year_month month) {
  return model::CivilDay{month / std::chrono::day{1}};
}

std::vector<Month> calendar_months(const ZoneRules& zone, std::chrono::year_month start,
                                   int count) {
  std::vector<Month> months;
  Instant begin = first_instant(zone, first_day(start));
  for (int i = 0; i < count; ++i) {
    const auto month = start + std::chrono::months{i};
    const auto next = first_day(month + std::chrono::months{1});
    const Instant end = first_instant(zone, next);
    months.push_back({month, static_cast<int>((next - first_day(month)).count()), begin, end});
    begin = end;
  }
  return months;
}

}  // namespace wattweek::calendar
