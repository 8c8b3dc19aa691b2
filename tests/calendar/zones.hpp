#pragma once
// Small helpers for tests that speak of zones, dates and folds.

#include <doctest/doctest.h>

#include <chrono>
#include <string>
#include <variant>

#include "wattweek/calendar/fold.hpp"
#include "wattweek/calendar/zone_database.hpp"

namespace wattweek::tests {

/// The zone over a year and more on both sides, from the system's database.
inline calendar::ZoneRules zone(const std::string& name, int year, int years = 1) {
  const std::chrono::year_month first{std::chrono::year{year - 1}, std::chrono::January};
  auto rules = calendar::zone_rules(name, first, 12 * (years + 2));
  REQUIRE_MESSAGE(std::holds_alternative<calendar::ZoneRules>(rules), name);
  return std::get<calendar::ZoneRules>(std::move(rules));
}

inline model::CivilDay date(int year, unsigned month, unsigned day) {
  return model::CivilDay{std::chrono::year{year} / std::chrono::month{month} /
                         std::chrono::day{day}};
}

/// Elapsed hours of one local date.
inline double hours_of(const calendar::ZoneRules& rules, model::CivilDay day) {
  const auto length = calendar::first_instant(rules, day + std::chrono::days{1}) -
                      calendar::first_instant(rules, day);
  return static_cast<double>(length.count()) / 3600;
}

/// Elapsed hours of one local year.
inline double hours_of_year(const calendar::ZoneRules& rules, int year) {
  const auto length = calendar::first_instant(rules, date(year + 1, 1, 1)) -
                      calendar::first_instant(rules, date(year, 1, 1));
  return static_cast<double>(length.count()) / 3600;
}

/// Hours of the clock, `from` before `to` or over midnight.
inline model::HourSpan clock(int from_hour, int from_minute, int to_hour, int to_minute) {
  return {from_hour * 60 + from_minute, to_hour * 60 + to_minute};
}

/// Elapsed hours in which a window holds in a year of the zone.
inline double window_hours(const model::Window& window, const calendar::ZoneRules& rules, int year,
                           const model::Holidays* holidays = nullptr,
                           std::vector<model::DateSpan> except = {}) {
  const std::chrono::year_month start{std::chrono::year{year}, std::chrono::January};
  const calendar::Condition condition{{&window}, std::move(except), holidays};
  const calendar::Fold folded = calendar::fold({start, 12, {condition}, {}}, rules);
  const auto seconds = calendar::seconds_by_situation(folded);
  double sum = 0;
  for (std::size_t s = 0; s < folded.situations(); ++s) {
    if (folded.holds(s, 0)) sum += static_cast<double>(seconds[s]) / 3600;
  }
  return sum;
}

}  // namespace wattweek::tests
