#include "coverage.hpp"

#include <algorithm>
#include <set>
#include <string>
#include <vector>

#include "wattweek/calendar/study_fold.hpp"

namespace wattweek::read {

namespace {

using std::chrono::year_month;
using std::chrono::year_month_day;

// A weekday falls on a date again, leap days included, after 28 years (until 2100).
constexpr std::chrono::year kFirstYear{2000};
constexpr int kYears = 28;

std::string digits(int number, std::size_t width) {
  std::string text = std::to_string(number);
  return text.size() < width ? std::string(width - text.size(), '0') + text : text;
}

// 2027-01-01 00:00, with seconds where there are any.
std::string in_words(calendar::LocalTime time) {
  const auto day = std::chrono::floor<std::chrono::days>(time);
  const year_month_day date(day);
  const std::chrono::hh_mm_ss clock(time - day);
  std::string text = digits(static_cast<int>(date.year()), 4) + "-" +
                     digits(static_cast<int>(static_cast<unsigned>(date.month())), 2) + "-" +
                     digits(static_cast<int>(static_cast<unsigned>(date.day())), 2) + " " +
                     digits(static_cast<int>(clock.hours().count()), 2) + ":" +
                     digits(static_cast<int>(clock.minutes().count()), 2);
  const auto seconds = static_cast<int>(clock.seconds().count());
  return seconds == 0 ? text : text + ":" + digits(seconds, 2);
}

year_month_day date_of(model::CivilDay day) { return year_month_day(day); }

std::vector<model::DateSpan> date_spans(const model::Tariff& tariff) {
  std::vector<model::DateSpan> spans;
  for (const model::Band& band : tariff.bands) {
    for (const model::Window& window : band.when) {
      if (window.dates) spans.push_back(*window.dates);
    }
  }
  return spans;
}

bool every_window_has_dates(const model::Tariff& tariff) {
  for (const model::Band& band : tariff.bands) {
    for (const model::Window& window : band.when) {
      if (!window.dates) return false;
    }
  }
  return true;
}

// The whole months from the first date to the last.
std::optional<Months> months_of(const std::vector<model::DateSpan>& spans) {
  model::CivilDay first = spans.front().first;
  model::CivilDay last = spans.front().last;
  for (const model::DateSpan& span : spans) {
    first = std::min(first, span.first);
    last = std::max(last, span.last);
  }
  const year_month_day from = date_of(first);
  const year_month_day to = date_of(last + std::chrono::days(1));
  year_month begin = from.year() / from.month();
  if (static_cast<unsigned>(from.day()) > 1) begin += std::chrono::months(1);
  const auto count = static_cast<int>((to.year() / to.month() - begin).count());
  return count > 0 ? std::optional(Months{begin, count}) : std::nullopt;
}

// Inside a span of dates, as outside, every weekday should meet every date.
std::set<int> years_to_look_at(const model::Tariff& tariff) {
  std::set<int> years;
  for (int i = 0; i < kYears; ++i) years.insert(static_cast<int>(kFirstYear) + i);
  for (const model::DateSpan& span : date_spans(tariff)) {
    const int first = static_cast<int>(date_of(span.first).year());
    const int last = static_cast<int>(date_of(span.last).year());
    for (int year = first; year <= std::min(last, first + kYears - 1); ++year) years.insert(year);
    years.insert(last);
  }
  for (const model::CivilDay day : tariff.holidays.dates) {
    years.insert(static_cast<int>(date_of(day).year()));
  }
  return years;
}

// Years that follow each other are looked at in one go.
std::vector<Months> runs_of(const std::set<int>& years) {
  std::vector<Months> runs;
  int before = 0;
  for (const int year : years) {
    if (runs.empty() || year != before + 1) {
      runs.push_back({std::chrono::year(year) / std::chrono::January, 0});
    }
    runs.back().count += 12;
    before = year;
  }
  return runs;
}

}  // namespace

std::optional<diag::Diagnostic> gap_in(const TariffDraft& draft, Months months,
                                       const calendar::ZoneRules& zone) {
  const auto gap = calendar::first_uncovered(draft.tariff, months.first, months.count, zone);
  if (!gap) return std::nullopt;
  return diag::Diagnostic{draft.bands_place,
                          "band: no band holds at " + in_words(*gap) +
                              " local time; expected one at every instant, such as a last band "
                              "without days, hours, months and dates"};
}

std::optional<diag::Diagnostic> gap_anytime(const TariffDraft& draft) {
  const calendar::ZoneRules no_clock_changes;
  if (every_window_has_dates(draft.tariff)) {
    const auto months = months_of(date_spans(draft.tariff));
    return months ? gap_in(draft, *months, no_clock_changes) : std::nullopt;
  }
  for (const Months& run : runs_of(years_to_look_at(draft.tariff))) {
    if (auto gap = gap_in(draft, run, no_clock_changes)) return gap;
  }
  return std::nullopt;
}

}  // namespace wattweek::read
