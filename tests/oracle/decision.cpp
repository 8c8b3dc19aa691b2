#include "decision.hpp"

#include <algorithm>
#include <cmath>

namespace wattweek::oracle {
namespace {

double central(const model::MoneyRange& range) { return units::in_currency(range.central()); }

bool has_horizon(const model::Study& study) { return study.finance && study.finance->years; }

// R15.
bool equal(double a, double b) {
  return std::fabs(a - b) <= 1e-9 * std::max(std::fabs(a), std::fabs(b));
}

// 0 where the two are equal.
double difference(double a, double b) { return equal(a, b) ? 0 : a - b; }

// What the price rise makes of the year's cost in year t.
double risen(const model::Finance& finance, int t) {
  return std::pow(1 + finance.price_rise.central(), t - 1);
}

// What an amount at the end of year t is worth today, as a fraction.
double discounted(const model::Finance& finance, int t) {
  return 1 / std::pow(1 + finance.discount_rate.central(), t);
}

double later_costs_of_year(const model::Candidate& candidate, int year) {
  double sum = 0;
  for (const model::LaterCost& later : candidate.later) {
    if (later.year == year) sum += central(later.cost);
  }
  return sum;
}

// R12, the present cost with C as the yearly cost.
double present_cost(const model::Finance& finance, const model::Candidate& candidate, double c) {
  const int n = *finance.years;
  double sum = central(candidate.purchase);
  for (int t = 1; t <= n; ++t) {
    sum += c * risen(finance, t) * discounted(finance, t);
    sum += later_costs_of_year(candidate, t) * discounted(finance, t);
  }
  return sum - central(candidate.resale) * discounted(finance, n);
}

// R13: the running sum of the discounted savings less the later costs, at the end of each year
// before (`[y].first`) and after (`[y].second`) the later costs of that year; year 0 is today.
std::vector<std::pair<double, double>> running_sums(const model::Finance& finance,
                                                    const Contender& candidate,
                                                    const Contender& baseline, double saves) {
  std::vector<std::pair<double, double>> sums{{0.0, 0.0}};
  for (int t = 1; t <= *finance.years; ++t) {
    const double before = sums.back().second + saves * risen(finance, t) * discounted(finance, t);
    const double later =
        later_costs_of_year(*candidate.candidate, t) - later_costs_of_year(*baseline.candidate, t);
    sums.emplace_back(before, before - later * discounted(finance, t));
  }
  return sums;
}

// R13: tries, one after the other, every time at which the sum may come to stay at the extra
// purchase: today, the end of each year, and where it passes the extra purchase within a year.
std::optional<double> discounted_payback(const std::vector<std::pair<double, double>>& sums,
                                         double extra_purchase) {
  const auto reached = [&](double sum) {
    return sum >= extra_purchase || equal(sum, extra_purchase);
  };
  const std::size_t years = sums.size() - 1;
  const auto stays_from_end_of = [&](std::size_t year) {
    for (std::size_t y = year; y <= years; ++y) {
      if (!reached(sums[y].second) || (y > year && !reached(sums[y].first))) return false;
    }
    return true;
  };
  for (std::size_t y = 0; y <= years; ++y) {
    if (stays_from_end_of(y)) return static_cast<double>(y);
    if (y == years || !reached(sums[y + 1].first) || !stays_from_end_of(y + 1)) continue;
    const double rise = sums[y + 1].first - sums[y].second;
    return static_cast<double>(y) + (extra_purchase - sums[y].second) / rise;
  }
  return std::nullopt;
}

// Where a function changes its sign between a and b.
double bisect(const std::function<double(double)>& function, double a, double b) {
  const bool rises = function(b) > 0;
  for (int i = 0; i < 200; ++i) {
    const double middle = (a + b) / 2;
    ((function(middle) > 0) == rises ? b : a) = middle;
  }
  return (a + b) / 2;
}

// R13: looks at every piece between two kinks, in which the gap is a straight line: it is
// nothing all along, or at an end, or at the one point where it changes its sign.
std::optional<double> break_even(const model::Study& study, const Contender& candidate,
                                 const Contender& baseline) {
  const auto cost_of = [&](const Contender& contender, double x) {
    return present_cost(*study.finance, *contender.candidate, contender.cost_at(x));
  };
  const auto gap = [&](double x) { return cost_of(candidate, x) - cost_of(baseline, x); };
  const auto no_gap = [&](double x) { return equal(cost_of(candidate, x), cost_of(baseline, x)); };

  std::vector<double> edges{0.0, 1e6};
  edges.insert(edges.end(), candidate.kinks.begin(), candidate.kinks.end());
  edges.insert(edges.end(), baseline.kinks.begin(), baseline.kinks.end());
  std::sort(edges.begin(), edges.end());

  std::vector<double> equal_at;
  for (std::size_t i = 0; i + 1 < edges.size(); ++i) {
    const double a = edges[i];
    const double b = edges[i + 1];
    if (no_gap((a + b) / 2) && no_gap(a + (b - a) / 3)) {
      equal_at.push_back(std::clamp(1.0, a, b));
      continue;
    }
    if (no_gap(a)) equal_at.push_back(a);
    if (no_gap(b)) equal_at.push_back(b);
    if (!no_gap(a) && !no_gap(b) && gap(a) * gap(b) < 0) equal_at.push_back(bisect(gap, a, b));
  }
  std::optional<double> nearest;
  std::sort(equal_at.begin(), equal_at.end());
  for (const double x : equal_at) {
    if (!nearest || std::fabs(x - 1) < std::fabs(*nearest - 1)) nearest = x;
  }
  return nearest;
}

}  // namespace

std::optional<LifetimeOfCandidate> lifetime_of(const model::Study& study,
                                               const Contender& contender) {
  if (!has_horizon(study)) return std::nullopt;
  LifetimeOfCandidate lifetime;
  lifetime.purchase = central(contender.candidate->purchase);
  lifetime.resale = central(contender.candidate->resale);
  for (int t = 1; t <= *study.finance->years; ++t) {
    lifetime.energy_cost += contender.cost * risen(*study.finance, t);
    lifetime.later_cost += later_costs_of_year(*contender.candidate, t);
  }
  lifetime.total = lifetime.purchase + lifetime.energy_cost + lifetime.later_cost - lifetime.resale;
  lifetime.present_cost = present_cost(*study.finance, *contender.candidate, contender.cost);
  return lifetime;
}

RowReckoned compare(const model::Study& study, const Contender& candidate,
                    const Contender& baseline) {
  const double a_year = 12.0 / study.months;
  RowReckoned row;
  row.saves_kwh = (baseline.energy_kwh - candidate.energy_kwh) * a_year;
  row.saves_cost = (baseline.cost - candidate.cost) * a_year;
  row.extra_purchase =
      central(candidate.candidate->purchase) - central(baseline.candidate->purchase);

  const double saves = difference(baseline.cost, candidate.cost) * a_year;
  const double extra =
      difference(central(candidate.candidate->purchase), central(baseline.candidate->purchase));
  if (extra > 0 && saves > 0) row.payback_years = extra / saves;
  if (extra <= 0 && saves >= 0) row.payback_years = 0;
  if (extra < 0 && saves < 0) row.overtaken_years = extra / saves;

  if (!has_horizon(study)) return row;
  row.discounted_payback_years =
      discounted_payback(running_sums(*study.finance, candidate, baseline, saves), extra);
  row.saves_present_cost = present_cost(*study.finance, *baseline.candidate, baseline.cost) -
                           present_cost(*study.finance, *candidate.candidate, candidate.cost);
  row.break_even_price_factor = break_even(study, candidate, baseline);
  return row;
}

}  // namespace wattweek::oracle
