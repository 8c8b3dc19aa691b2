#pragma once
// The study walked minute by minute: what the wall clock shows, and which windows hold then.
// All changes of offset and all edges of windows fall on whole minutes.

#include <compare>
#include <map>
#include <vector>

#include "wattweek/model/study.hpp"

namespace wattweek::oracle {

/// What stands on the wall at some instant.
struct Shown {
  model::CivilDay date;
  int minute_of_day = 0;
};

/// A window holds where one of its spans does. A span's governing day is the date shown; after
/// midnight of a span that crosses it, the calendar's day before. `away` are dates that no
/// governing day may lie in.
bool holds(const model::Window& window, const Shown& shown, const model::Holidays& holidays,
           const std::vector<model::DateSpan>& away);

/// All that matters at an instant but its month and band.
struct Situation {
  std::vector<bool> holds;  ///< For each window of uses and rests.
  /// What the clock and the calendar show, Monday 00:00 being 0; 0 where no profile asks for it.
  std::size_t hour_of_week = 0;

  friend auto operator<=>(const Situation&, const Situation&) = default;
};

/// Where each window stands in a `Situation`.
struct WindowNumbers {
  std::vector<std::vector<std::size_t>> use;                ///< [workload][use]
  std::vector<std::vector<std::vector<std::size_t>>> rest;  ///< [candidate][device][rest]
};
WindowNumbers number_windows(const model::Study& study);

struct Minutes {
  std::vector<std::chrono::year_month> months;
  std::vector<int> days;  ///< Calendar days of each month.
  /// How many minutes each situation holds: `count[month][band][situation]`.
  std::vector<std::vector<std::map<Situation, int>>> count;
  std::vector<diag::Place> windows_that_never_hold;  ///< Of uses, rests and bands.
};

/// Every minute from the first instant of the study's first date on.
Minutes walk_minutes(const model::Study& study);

}  // namespace wattweek::oracle
