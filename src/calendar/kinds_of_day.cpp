#include "kinds_of_day.hpp"

#include <algorithm>

namespace wattweek::calendar {

namespace {

using ClassMonths = std::array<model::MonthSet, kDayClasses>;

ClassMonths months_in(const PriceGrid& grid, std::optional<std::size_t> plan) {
  ClassMonths found;
  for (std::size_t c = 0; c < kDayClasses; ++c) {
    for (std::size_t m = 0; m < 12; ++m) {
      found[c][m] = grid[c][m] && (!plan || *grid[c][m] == *plan);
    }
  }
  return found;
}

bool has_class(const KindOfDay& kind, std::size_t day_class) {
  return day_class < 7 ? kind.days[day_class] : kind.holidays_on[day_class - 7];
}

void add_class(KindOfDay& kind, std::size_t day_class) {
  (day_class < 7 ? kind.days : kind.holidays_on).set(day_class % 7);
}

// Full where nothing that occurs is missing.
void fill(KindOfDay& kind, const ClassMonths& occur) {
  model::WeekdaySet days_that_occur;
  model::WeekdaySet holidays_that_occur;
  model::MonthSet months_that_occur;
  for (std::size_t c = 0; c < kDayClasses; ++c) {
    if (has_class(kind, c)) months_that_occur |= occur[c];
    if ((occur[c] & kind.months).any()) (c < 7 ? days_that_occur : holidays_that_occur).set(c % 7);
  }
  if ((months_that_occur & ~kind.months).none()) kind.months = model::kEveryMonth;
  const bool all_days = days_that_occur.any() && (days_that_occur & ~kind.days).none();
  if (all_days) kind.days = model::kEveryDay;
  const bool all_holidays = (holidays_that_occur & ~kind.holidays_on).none();
  if (all_holidays && (all_days || holidays_that_occur.any())) kind.holidays_on = model::kEveryDay;
}

}  // namespace

std::vector<KindOfDay> kinds_of(const PriceGrid& grid, std::size_t plan) {
  const ClassMonths occur = months_in(grid, std::nullopt);
  const ClassMonths in_plan = months_in(grid, plan);
  std::vector<KindOfDay> kinds;
  for (std::size_t c = 0; c < kDayClasses; ++c) {
    if (in_plan[c].none()) continue;
    // A class of days joins a kind if they differ at most in months in which it never occurs.
    auto kind = std::find_if(kinds.begin(), kinds.end(), [&](const KindOfDay& known) {
      return (known.months & occur[c]) == in_plan[c];
    });
    if (kind == kinds.end()) {
      const bool always = in_plan[c] == occur[c];
      kind = kinds.insert(kinds.end(), {{}, {}, always ? model::kEveryMonth : in_plan[c]});
    }
    add_class(*kind, c);
  }
  for (KindOfDay& kind : kinds) fill(kind, occur);
  return kinds;
}

std::vector<std::size_t> plans_in(const PriceGrid& grid) {
  std::vector<std::size_t> plans;
  for (const auto& months : grid) {
    for (const std::optional<std::size_t>& plan : months) {
      if (plan && std::find(plans.begin(), plans.end(), *plan) == plans.end()) {
        plans.push_back(*plan);
      }
    }
  }
  return plans;
}

}  // namespace wattweek::calendar
