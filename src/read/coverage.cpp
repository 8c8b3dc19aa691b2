#include "coverage.hpp"

#include <algorithm>
#include <string>
#include <vector>

#include "wattweek/calendar/study_fold.hpp"

namespace wattweek::read {

namespace {

using std::chrono::year_month;
using std::chrono::year_month_day;

year_month_day date_of(model::CivilDay day) { return year_month_day(day); }

// The whole months from the first date to the last.
std::optional<calendar::Months> months_of(const std::vector<model::DateSpan>& spans) {
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
  return count > 0 ? std::optional(calendar::Months{begin, count}) : std::nullopt;
}

}  // namespace

std::optional<diag::Diagnostic> gap_in(const TariffDraft& draft, calendar::Months months,
                                       const calendar::ZoneRules& zone) {
  const auto gap = calendar::first_uncovered(draft.tariff, months.first, months.count, zone);
  if (!gap) return std::nullopt;
  return diag::Diagnostic{draft.bands_place,
                          "band: no band holds at " + calendar::to_text(*gap) +
                              " local time; expected one at every instant, such as a last band "
                              "without days, hours, months and dates"};
}

std::optional<diag::Diagnostic> gap_anytime(const TariffDraft& draft) {
  const calendar::ZoneRules no_clock_changes;
  if (calendar::every_window_has_dates(draft.tariff)) {
    const auto months = months_of(calendar::date_spans(draft.tariff));
    return months ? gap_in(draft, *months, no_clock_changes) : std::nullopt;
  }
  for (const calendar::Months& run : calendar::years_to_try(draft.tariff)) {
    if (auto gap = gap_in(draft, run, no_clock_changes)) return gap;
  }
  return std::nullopt;
}

}  // namespace wattweek::read
