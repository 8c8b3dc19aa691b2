#include "wattweek/decide/lifetime.hpp"

#include <algorithm>
#include <cmath>

namespace wattweek::decide {

namespace {

// Present value of one year's energy that costs 1 at today's prices.
double present_value_of_year(const Horizon& horizon, int year) {
  return std::pow(1 + horizon.price_rise, year - 1) * present_value_factor(horizon, year);
}

bool reaches(double sum, double goal) { return sum >= goal || nearly_equal(sum, goal); }

// What falls due at the end of each year 1..N, discounted: candidate's less baseline's.
std::vector<double> extra_dues(const Horizon& horizon, const std::vector<DueCost>& candidate,
                               const std::vector<DueCost>& baseline) {
  std::vector<double> dues(static_cast<std::size_t>(horizon.years) + 1, 0.0);
  const auto book = [&](const DueCost& due, double sign) {
    if (due.year > horizon.years) return;
    dues[static_cast<std::size_t>(due.year)] +=
        sign * due.amount * present_value_factor(horizon, due.year);
  };
  for (const DueCost& due : candidate) book(due, 1);
  for (const DueCost& due : baseline) book(due, -1);
  return dues;
}

// The running sum over one year: linear, then what falls due at its end.
struct YearOfSavings {
  double at_start = 0;
  double before_due = 0;
  double at_end = 0;
};

std::vector<YearOfSavings> running_sum(const Horizon& horizon, double saves_a_year,
                                       const std::vector<double>& dues) {
  std::vector<YearOfSavings> years;
  double sum = 0;
  for (int year = 1; year <= horizon.years; ++year) {
    const double grown = sum + saves_a_year * present_value_of_year(horizon, year);
    const double rest = grown - dues[static_cast<std::size_t>(year)];
    years.push_back({sum, grown, rest});
    sum = rest;
  }
  return years;
}

}  // namespace

double present_value_factor(const Horizon& horizon, int year) {
  return std::pow(1 + horizon.discount_rate, -year);
}

double present_value_of_yearly(const Horizon& horizon) {
  double sum = 0;
  for (int year = 1; year <= horizon.years; ++year) sum += present_value_of_year(horizon, year);
  return sum;
}

Lifetime reckon_lifetime(const Horizon& horizon, const Outlay& outlay, double yearly_cost) {
  Lifetime life;
  life.years = horizon.years;
  life.purchase = outlay.purchase;
  life.resale = outlay.resale;
  for (int year = 1; year <= horizon.years; ++year) {
    life.energy_cost += yearly_cost * std::pow(1 + horizon.price_rise, year - 1);
  }
  double later_present = 0;
  for (const DueCost& due : outlay.later) {
    if (due.year > horizon.years) continue;
    life.later_cost += due.amount;
    later_present += due.amount * present_value_factor(horizon, due.year);
  }
  life.total = life.purchase + life.energy_cost + life.later_cost - life.resale;
  life.present_cost = life.purchase + yearly_cost * present_value_of_yearly(horizon) +
                      later_present - life.resale * present_value_factor(horizon, horizon.years);
  return life;
}

std::optional<double> payback_years(const Trade& trade) {
  if (trade.extra_purchase > 0 && trade.saves_a_year > 0) {
    return trade.extra_purchase / trade.saves_a_year;
  }
  if (trade.extra_purchase <= 0 && trade.saves_a_year >= 0) return 0.0;
  return std::nullopt;
}

std::optional<double> overtaken_years(const Trade& trade) {
  if (trade.extra_purchase < 0 && trade.saves_a_year < 0) {
    return trade.extra_purchase / trade.saves_a_year;
  }
  return std::nullopt;
}

std::optional<double> discounted_payback_years(const Horizon& horizon, const Trade& trade,
                                               const std::vector<DueCost>& candidate_later,
                                               const std::vector<DueCost>& baseline_later) {
  const double goal = trade.extra_purchase;
  const auto years = running_sum(horizon, trade.saves_a_year,
                                 extra_dues(horizon, candidate_later, baseline_later));
  if (!reaches(years.back().at_end, goal)) return std::nullopt;
  // From the end backward, as long as the sum stays at the goal.
  for (int year = horizon.years; year >= 1; --year) {
    const YearOfSavings& sum = years[static_cast<std::size_t>(year) - 1];
    if (!reaches(sum.before_due, goal)) return year;
    if (!reaches(sum.at_start, goal)) {
      return year - 1 + (goal - sum.at_start) / (sum.before_due - sum.at_start);
    }
  }
  return 0.0;
}

double extra_purchase_earned_back(const Horizon& horizon, int within, double saves_a_year,
                                  const std::vector<DueCost>& candidate_later,
                                  const std::vector<DueCost>& baseline_later) {
  const auto years =
      running_sum(horizon, saves_a_year, extra_dues(horizon, candidate_later, baseline_later));
  // Straight within a year, so the least stands at the end of one, before or after what falls due.
  double least = years[static_cast<std::size_t>(within) - 1].at_end;
  for (int year = within + 1; year <= horizon.years; ++year) {
    const YearOfSavings& sum = years[static_cast<std::size_t>(year) - 1];
    least = std::min({least, sum.before_due, sum.at_end});
  }
  return least;
}

}  // namespace wattweek::decide
