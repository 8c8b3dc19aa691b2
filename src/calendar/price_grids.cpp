#include "price_grids.hpp"

#include <algorithm>

namespace wattweek::calendar {

namespace {

bool is_first_of_month(const WalkedDay& day) { return day.today.month != day.yesterday.month; }
bool is_first_of_dates(const WalkedDay& day) { return day.today.spans != day.yesterday.spans; }

// How many things set the day before apart from an ordinary one of the same month and dates.
int turns(const WalkedDay& day) {
  return static_cast<int>(is_first_of_month(day)) + static_cast<int>(is_first_of_dates(day)) +
         static_cast<int>(day.yesterday.is_holiday);
}

// From this minute on the two plans are the same.
int alike_from(const std::vector<Stretch>& a, const std::vector<Stretch>& b) {
  auto in_a = a.rbegin();
  auto in_b = b.rbegin();
  int from = 1440;
  for (; in_a != a.rend() && in_b != b.rend() && in_a->band == in_b->band; ++in_a, ++in_b) {
    from = std::max(in_a->begin_min, in_b->begin_min);
    if (in_a->begin_min != in_b->begin_min) break;
  }
  return from;
}

// One reason is enough. Days with a single one come first, so what they said need not be repeated.
void note(CarriedOver& carried_over, const WalkedDay& day, int until_min) {
  carried_over.until_min = std::max(carried_over.until_min, until_min);
  if (is_first_of_month(day) && carried_over.first_of[day.today.month]) return;
  if (day.yesterday.is_holiday && carried_over.after_holidays) return;
  if (is_first_of_dates(day)) {
    carried_over.dates.push_back(day.first);
  } else if (is_first_of_month(day)) {
    carried_over.first_of.set(day.today.month);
  } else {
    carried_over.after_holidays = true;
  }
}

}  // namespace

PriceGrids price_grids(std::vector<WalkedDay> days) {
  std::stable_sort(days.begin(), days.end(),
                   [](const WalkedDay& a, const WalkedDay& b) { return turns(a) < turns(b); });
  PriceGrids grids;
  std::map<std::vector<Stretch>, std::size_t> known;
  for (const WalkedDay& day : days) {
    const auto [plan, is_new] = known.try_emplace(day.stretches, grids.plans.size());
    if (is_new) grids.plans.push_back(day.stretches);
    const std::size_t day_class = day.today.weekday + (day.today.is_holiday ? 7 : 0);
    auto& cell = grids.by_spans[day.today.spans][day_class][day.today.month];
    if (!cell) {
      cell = plan->second;
    } else if (*cell != plan->second) {
      note(grids.carried_over, day, alike_from(day.stretches, grids.plans[*cell]));
    }
  }
  std::sort(grids.carried_over.dates.begin(), grids.carried_over.dates.end());
  auto& dates = grids.carried_over.dates;
  dates.erase(std::unique(dates.begin(), dates.end()), dates.end());
  return grids;
}

}  // namespace wattweek::calendar
