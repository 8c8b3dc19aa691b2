#pragma once
// `week = [...]` of a profile, written from a rule.

#include <fmt/format.h>

#include <string>

namespace wattweek::tests {

/// `of_hour` gives the watts of the hours 0 to 167 of the week, Monday 00:00 first.
template <class WattsOfHour>
std::string week_text(WattsOfHour of_hour) {
  std::string numbers;
  for (int hour = 0; hour < 168; ++hour) {
    numbers += fmt::format("{}{}", hour == 0 ? "" : ", ", of_hour(hour));
  }
  return "week = [" + numbers + "]";
}

/// 1 W in the first hour of Monday, 168 W in the last of Sunday: no two hours alike. A day d,
/// Monday being 0, has 24 (24 d) + (1 + 2 + ... + 24) = 576 d + 300 Wh.
inline std::string rising_week() {
  return week_text([](int hour) { return hour + 1; });
}

/// The same watts around the clock.
inline std::string steady_week(double watts) {
  return week_text([watts](int) { return watts; });
}

}  // namespace wattweek::tests
