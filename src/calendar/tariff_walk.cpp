#include "wattweek/calendar/tariff_walk.hpp"

#include <algorithm>
#include <utility>

#include "kinds_of_day.hpp"
#include "price_grids.hpp"
#include "wattweek/calendar/tariff_time.hpp"

namespace wattweek::calendar {

using std::chrono::days;

namespace {

// Dates on which the same prices hold, and which.
struct Season {
  std::vector<DateRun> dates;
  PriceGrid grid;
};

// Every eighth day, so that holidays meet every weekday in every month, and ordinary days too.
std::vector<model::CivilDay> assumed_holidays(const model::Tariff& tariff) {
  std::vector<model::CivilDay> holidays;
  for (const Months& run : years_to_try(tariff)) {
    const model::CivilDay end = first_day(run.first + std::chrono::months(run.count));
    for (model::CivilDay day = first_day(run.first); day < end; day += days{8}) {
      holidays.push_back(day);
    }
  }
  return holidays;
}

// The stretches of time between the ends of the spans.
std::vector<DateRun> runs_between(const std::vector<model::DateSpan>& spans) {
  std::vector<model::CivilDay> begins;
  for (const model::DateSpan& span : spans) {
    begins.push_back(span.first);
    begins.push_back(span.last + days{1});
  }
  std::sort(begins.begin(), begins.end());
  begins.erase(std::unique(begins.begin(), begins.end()), begins.end());
  std::vector<DateRun> runs(1);
  for (const model::CivilDay begin : begins) {
    runs.back().last = begin - days{1};
    runs.push_back({begin, std::nullopt});
  }
  return runs;
}

std::vector<bool> spans_in(const DateRun& run, const std::vector<model::DateSpan>& spans) {
  std::vector<bool> held;
  for (const model::DateSpan& span : spans) {
    held.push_back(run.first && run.last && span.contains(*run.first));
  }
  return held;
}

bool agree(const PriceGrid& a, const PriceGrid& b) {
  for (std::size_t c = 0; c < kDayClasses; ++c) {
    for (std::size_t m = 0; m < 12; ++m) {
      if (a[c][m] && b[c][m] && *a[c][m] != *b[c][m]) return false;
    }
  }
  return true;
}

void add_run(std::vector<DateRun>& dates, const DateRun& run) {
  if (!dates.empty() && dates.back().last && run.first &&
      *dates.back().last + days{1} == *run.first) {
    dates.back().last = run.last;
  } else {
    dates.push_back(run);
  }
}

// Does every ordinary day of the one occur in the other?
bool covers(const PriceGrid& whole, const PriceGrid& part) {
  for (std::size_t c = 0; c < 7; ++c) {
    for (std::size_t m = 0; m < 12; ++m) {
      if (part[c][m] && !whole[c][m]) return false;
    }
  }
  return true;
}

// Is there nothing that tells the two apart, and enough to tell?
bool alike(const PriceGrid& a, const PriceGrid& b) {
  return agree(a, b) && (covers(a, b) || covers(b, a));
}

// Joins what the grid says to the season that is like it, or begins a new one.
void add_to_seasons(std::vector<Season>& seasons, const DateRun& run, const PriceGrid& grid) {
  const auto same = std::find_if(seasons.begin(), seasons.end(), [&grid](const Season& season) {
    return alike(season.grid, grid);
  });
  if (same == seasons.end()) {
    seasons.push_back({{run}, grid});
    return;
  }
  add_run(same->dates, run);
  for (std::size_t c = 0; c < kDayClasses; ++c) {
    for (std::size_t m = 0; m < 12; ++m) {
      if (grid[c][m]) same->grid[c][m] = grid[c][m];
    }
  }
}

std::vector<Season> seasons_of(const PriceGrids& grids, const std::vector<model::DateSpan>& spans) {
  std::vector<Season> seasons;
  for (const DateRun& run : runs_between(spans)) {
    const auto grid = grids.by_spans.find(spans_in(run, spans));
    if (grid != grids.by_spans.end()) add_to_seasons(seasons, run, grid->second);
  }
  return seasons;
}

// The days of which the tariff speaks.
std::vector<WalkedDay> days_spoken_of(const model::Tariff& tariff,
                                      const std::vector<model::DateSpan>& spans) {
  std::vector<WalkedDay> walked = walked_days(tariff, spans);
  if (!every_window_has_dates(tariff)) return walked;
  const std::vector<bool> no_dates(spans.size(), false);
  const auto is_silent = [&](const WalkedDay& day) { return day.today.spans == no_dates; };
  walked.erase(std::remove_if(walked.begin(), walked.end(), is_silent), walked.end());
  return walked;
}

std::vector<PricedDays> priced_days(const std::vector<Season>& seasons, const PriceGrids& grids) {
  std::vector<PricedDays> all;
  for (const Season& season : seasons) {
    for (const std::size_t plan : plans_in(season.grid)) {
      PricedDays priced{kinds_of(season.grid, plan), season.dates, grids.plans[plan]};
      const auto same = std::find_if(all.begin(), all.end(), [&](const PricedDays& known) {
        return known.kinds == priced.kinds && known.stretches == priced.stretches;
      });
      if (same == all.end()) {
        all.push_back(std::move(priced));
      } else {
        same->dates.insert(same->dates.end(), priced.dates.begin(), priced.dates.end());
      }
    }
  }
  return all;
}

// Dates in order, neighbours joined; none where they are all that there are.
void tidy_dates(std::vector<PricedDays>& all, const std::vector<Season>& seasons, bool say_always) {
  std::size_t runs = 0;
  for (const Season& season : seasons) runs += season.dates.size();
  for (PricedDays& priced : all) {
    const bool always = priced.dates.size() == runs;
    std::vector<DateRun> dates = std::exchange(priced.dates, {});
    if (always && !say_always) continue;
    std::sort(dates.begin(), dates.end(),
              [](const DateRun& a, const DateRun& b) { return a.first < b.first; });
    for (const DateRun& run : dates) add_run(priced.dates, run);
  }
}

}  // namespace

bool counts_holidays_of_study(const model::Tariff& tariff) {
  return tariff.holidays.count_as && !tariff.has_own_holidays;
}

TariffWalk walk(const model::Tariff& tariff) {
  const std::vector<model::DateSpan> spans = date_spans(tariff);
  if (spans.size() > kMostDateSpans) return {};
  model::Tariff walked = tariff;
  if (counts_holidays_of_study(tariff)) walked.holidays.dates = assumed_holidays(tariff);
  const PriceGrids grids = price_grids(days_spoken_of(walked, spans));
  const std::vector<Season> seasons = seasons_of(grids, spans);
  TariffWalk result{priced_days(seasons, grids), grids.carried_over};
  tidy_dates(result.days, seasons, every_window_has_dates(tariff));
  return result;
}

}  // namespace wattweek::calendar
