#include "minutes.hpp"

#include <absl/time/civil_time.h>
#include <absl/time/time.h>

#include <algorithm>
#include <stdexcept>
#include <string>

namespace wattweek::oracle {
namespace {

using std::chrono::days;

// R1, R2: the filters of a window that look at the governing day.
bool day_passes(const model::Window& window, model::CivilDay day, const model::Holidays& holidays,
                const std::vector<model::DateSpan>& away) {
  const std::chrono::year_month_day date(day);
  std::chrono::weekday weekday(day);
  if (holidays.count_as &&
      std::find(holidays.dates.begin(), holidays.dates.end(), day) != holidays.dates.end()) {
    weekday = *holidays.count_as;
  }
  if (!window.days.test(weekday.iso_encoding() - 1)) return false;
  if (!window.months.test(static_cast<unsigned>(date.month()) - 1)) return false;
  if (window.dates && (day < window.dates->first || day > window.dates->last)) return false;
  for (const model::DateSpan& span : away) {
    if (day >= span.first && day <= span.last) return false;
  }
  return true;
}

Shown shown_at(const absl::TimeZone& zone, absl::Time instant) {
  const absl::CivilSecond civil = zone.At(instant).cs;
  const auto day = absl::CivilDay(civil) - absl::CivilDay(1970, 1, 1);
  return {model::CivilDay(days(day)), civil.hour() * 60 + civil.minute()};
}

// The earliest instant whose local date is `day`, or later where the zone skipped that date.
absl::Time first_instant(const absl::TimeZone& zone, model::CivilDay day) {
  absl::Time instant =
      absl::FromUnixSeconds(std::int64_t{86400} * (day.time_since_epoch().count() - 2));
  while (shown_at(zone, instant).date < day) instant += absl::Minutes(1);
  return instant;
}

absl::TimeZone load_zone(const std::string& name) {
  absl::TimeZone zone;
  if (!absl::LoadTimeZone(name, &zone)) throw std::logic_error("no time zone " + name);
  return zone;
}

// A window with what its governing days are judged by.
struct Watched {
  const model::Window* window;
  const model::Holidays* holidays;
  std::vector<model::DateSpan> away;
  std::size_t band = 0;
};

bool holds(const Watched& watched, const Shown& shown) {
  return oracle::holds(*watched.window, shown, *watched.holidays, watched.away);
}

std::vector<model::DateSpan> away_from(const model::Study& study, std::size_t workload) {
  std::vector<model::DateSpan> away;
  for (const model::Away& entry : study.away) {
    const auto& named = entry.workloads;
    if (std::find(named.begin(), named.end(), workload) != named.end()) {
      away.push_back(entry.dates);
    }
  }
  return away;
}

// In the order of `number_windows`.
std::vector<Watched> uses_and_rests(const model::Study& study) {
  std::vector<Watched> all;
  for (std::size_t w = 0; w < study.workloads.size(); ++w) {
    for (const model::Use& use : study.workloads[w].uses) {
      all.push_back({&use.window, &study.holidays, away_from(study, w)});
    }
  }
  for (const model::Candidate& candidate : study.candidates) {
    for (const model::Device& device : candidate.devices) {
      for (const model::Rest& rest : device.rests) {
        all.push_back({&rest.window, &study.holidays, {}});
      }
    }
  }
  return all;
}

std::vector<Watched> band_windows(const model::Study& study) {
  std::vector<Watched> all;
  for (std::size_t b = 0; b < study.tariff.bands.size(); ++b) {
    for (const model::Window& window : study.tariff.bands[b].when) {
      all.push_back({&window, &study.tariff.holidays, {}, b});
    }
  }
  return all;
}

// Looks at every window at one instant after another, and remembers which of them ever held.
class Watcher {
 public:
  explicit Watcher(std::vector<Watched> windows)
      : windows_(std::move(windows)), now_(windows_.size()), ever_(windows_.size()) {}

  const std::vector<bool>& look(const Shown& shown) {
    for (std::size_t i = 0; i < windows_.size(); ++i) {
      now_[i] = holds(windows_[i], shown);
      if (now_[i]) ever_[i] = true;
    }
    return now_;
  }

  // The first in file order that holds sets the price.
  std::size_t first_band(const Shown& shown) {
    look(shown);
    for (std::size_t i = 0; i < windows_.size(); ++i) {
      if (now_[i]) return windows_[i].band;
    }
    throw std::logic_error("a moment that no band covers");
  }

  void report_never_held(std::vector<diag::Place>& places) const {
    for (std::size_t i = 0; i < windows_.size(); ++i) {
      if (!ever_[i]) places.push_back(windows_[i].window->place);
    }
  }

 private:
  std::vector<Watched> windows_;
  std::vector<bool> now_;
  std::vector<bool> ever_;
};

bool has_week(const model::Study& study) {
  for (const model::Candidate& candidate : study.candidates) {
    for (const model::Device& device : candidate.devices) {
      if (device.profile->week) return true;
    }
  }
  return false;
}

std::size_t hour_of_week(const Shown& shown) {
  const std::size_t day = std::chrono::weekday(shown.date).iso_encoding() - 1;
  return day * 24 + static_cast<std::size_t>(shown.minute_of_day / 60);
}

model::CivilDay first_date(std::chrono::year_month month) {
  return model::CivilDay(month / std::chrono::day(1));
}

}  // namespace

bool holds(const model::Window& window, const Shown& shown, const model::Holidays& holidays,
           const std::vector<model::DateSpan>& away) {
  for (const model::HourSpan& span : window.hours) {
    const bool after_start = shown.minute_of_day >= span.start_min;
    const bool before_end = shown.minute_of_day < span.end_min;
    if (span.start_min < span.end_min) {
      if (after_start && before_end && day_passes(window, shown.date, holidays, away)) return true;
    } else {
      if (after_start && day_passes(window, shown.date, holidays, away)) return true;
      if (before_end && day_passes(window, shown.date - days(1), holidays, away)) return true;
    }
  }
  return false;
}

WindowNumbers number_windows(const model::Study& study) {
  WindowNumbers numbers;
  std::size_t next = 0;
  for (const model::Workload& workload : study.workloads) {
    numbers.use.emplace_back();
    for (std::size_t u = 0; u < workload.uses.size(); ++u) numbers.use.back().push_back(next++);
  }
  for (const model::Candidate& candidate : study.candidates) {
    numbers.rest.emplace_back();
    for (const model::Device& device : candidate.devices) {
      numbers.rest.back().emplace_back();
      for (std::size_t r = 0; r < device.rests.size(); ++r) {
        numbers.rest.back().back().push_back(next++);
      }
    }
  }
  return numbers;
}

Minutes walk_minutes(const model::Study& study) {
  const absl::TimeZone zone = load_zone(study.time_zone);
  Watcher habits(uses_and_rests(study));
  Watcher prices(band_windows(study));
  const bool asks_for_hour = has_week(study);
  Minutes minutes;
  for (int m = 0; m < study.months; ++m) {
    const auto month = study.start + std::chrono::months(m);
    const auto first = first_date(month);
    const auto next = first_date(month + std::chrono::months(1));
    minutes.months.push_back(month);
    minutes.days.push_back(static_cast<int>((next - first).count()));
    minutes.count.emplace_back(study.tariff.bands.size());
    const absl::Time end = first_instant(zone, next);
    for (absl::Time t = first_instant(zone, first); t < end; t += absl::Minutes(1)) {
      const Shown shown = shown_at(zone, t);
      const Situation now{habits.look(shown), asks_for_hour ? hour_of_week(shown) : 0};
      ++minutes.count.back()[prices.first_band(shown)][now];
    }
  }
  habits.report_never_held(minutes.windows_that_never_hold);
  prices.report_never_held(minutes.windows_that_never_hold);
  return minutes;
}

}  // namespace wattweek::oracle
