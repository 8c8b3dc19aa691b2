#pragma once
// What reading a log tells, as a page of text that a test can show whole.

#include <fmt/format.h>

#include <chrono>
#include <string>

#include "logged.hpp"

namespace wattweek::logs {

/// Clock times are of Berlin: UTC+1, in summer UTC+2, with the clocks put back on the last Sunday
/// of October (Directive 2000/84/EC, articles 2 and 3).
inline LogOptions berlin(LogOptions options = {}) {
  static const calendar::ZoneRules zone = zone_of("Europe/Berlin");
  options.zone = zone;
  return options;
}

/// "2024-10-27 00:30:00", in UTC; with a fraction where there is one.
inline std::string utc_text(Microseconds at_us) {
  using namespace std::chrono;
  const sys_time<microseconds> at{microseconds(at_us)};
  const auto midnight = floor<days>(at);
  const year_month_day date(midnight);
  const hh_mm_ss<microseconds> clock(at - midnight);
  std::string text =
      fmt::format("{:04}-{:02}-{:02} {:02}:{:02}:{:02}", int(date.year()), unsigned(date.month()),
                  unsigned(date.day()), clock.hours().count(), clock.minutes().count(),
                  clock.seconds().count());
  if (clock.subseconds().count() != 0) text += fmt::format(".{:06}", clock.subseconds().count());
  return text;
}

/// The readings, a line each; of many the first and the last.
inline std::string readings_text(const std::vector<Reading>& readings) {
  constexpr std::size_t kAll = 12;
  std::string text;
  for (std::size_t i = 0; i < readings.size(); ++i) {
    if (readings.size() > kAll && i == 1) {
      text += "...\n";
      i = readings.size() - 1;
    }
    text += fmt::format("{} {}\n", utc_text(readings[i].at_us), readings[i].value);
  }
  return text;
}

/// The readings of a log; or why there are none.
inline std::string readings_of(const std::string& text, const LogOptions& options = {},
                               const std::string& name = "log.csv") {
  const Logged log = logged(text, options, name);
  return log.problems + readings_text(log.readings);
}

/// All that came of a log: problems, or what was inferred, the counts of rows and the readings (in
/// UTC; W or Wh; "nan" is a mark of time without value).
inline std::string told(const std::string& text, const LogOptions& options = {},
                        const std::string& name = "log.csv") {
  const Logged log = logged(text, options, name);
  if (!log.problems.empty()) return log.problems;
  std::string page;
  for (const std::string& line : log.report.inferred) page += line + "\n";
  page += fmt::format("{} rows, {} used", log.report.rows, log.report.used);
  for (const Dropped& dropped : log.report.dropped) {
    page += fmt::format(", {} {}", dropped.rows, dropped.reason);
    if (dropped.first_line > 0) page += fmt::format(" (line {})", dropped.first_line);
  }
  return page + "\n" + readings_text(log.readings);
}

}  // namespace wattweek::logs
