#include "wattweek/calendar/tariff_time.hpp"

#include <algorithm>
#include <set>

namespace wattweek::calendar {

namespace {

constexpr int kFirstYear = 2000;
constexpr int kYears = 28;

int year_of(model::CivilDay day) {
  return static_cast<int>(std::chrono::year_month_day(day).year());
}

bool comes_before(const model::DateSpan& a, const model::DateSpan& b) {
  return a.first != b.first ? a.first < b.first : a.last < b.last;
}

// Inside a span of dates, as outside, every weekday should meet every date.
std::set<int> single_years(const model::Tariff& tariff) {
  std::set<int> years;
  for (int i = 0; i < kYears; ++i) years.insert(kFirstYear + i);
  for (const model::DateSpan& span : date_spans(tariff)) {
    const int first = year_of(span.first);
    const int last = year_of(span.last);
    for (int year = first; year <= std::min(last, first + kYears - 1); ++year) years.insert(year);
    years.insert(last);
  }
  for (const model::CivilDay day : tariff.holidays.dates) years.insert(year_of(day));
  return years;
}

}  // namespace

std::vector<Months> years_to_try(const model::Tariff& tariff) {
  std::vector<Months> runs;
  int before = 0;
  for (const int year : single_years(tariff)) {
    if (runs.empty() || year != before + 1) {
      runs.push_back({std::chrono::year(year) / std::chrono::January, 0});
    }
    runs.back().count += 12;
    before = year;
  }
  return runs;
}

std::vector<model::DateSpan> date_spans(const model::Tariff& tariff) {
  std::vector<model::DateSpan> spans;
  for (const model::Band& band : tariff.bands) {
    for (const model::Window& window : band.when) {
      if (window.dates) spans.push_back(*window.dates);
    }
  }
  std::sort(spans.begin(), spans.end(), comes_before);
  spans.erase(std::unique(spans.begin(), spans.end()), spans.end());
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

}  // namespace wattweek::calendar
