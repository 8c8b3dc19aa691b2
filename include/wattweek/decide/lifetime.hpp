#pragma once
// Money over years: what a candidate costs over the horizon, when a purchase has paid for
// itself, and at which price level two candidates cost the same.
//
// Simplifications: today's prices hold in the whole first year and rise once a year; every
// year's use is that of the study; energy is paid at the end of each year, purchases at the
// start, later costs and resale at the end of theirs.

#include <algorithm>
#include <cmath>
#include <optional>
#include <vector>

#include "wattweek/units/quantity.hpp"

namespace wattweek::decide {

/// Two amounts count as equal within this fraction of the larger.
inline constexpr double kEqual = 1e-9;
inline bool nearly_equal(double a, double b) {
  return std::abs(a - b) <= kEqual * std::max(std::abs(a), std::abs(b));
}

/// The finance figures, settled; both rates nominal, or both real.
struct Horizon {
  int years = 1;
  double discount_rate = 0;  ///< d, a year, > -1
  double price_rise = 0;     ///< g, a year, > -1
};

struct DueCost {
  int year = 1;  ///< Due at its end.
  double amount = 0;
};

/// What a candidate pays and gets beside its yearly energy.
struct Outlay {
  double purchase = 0;
  double resale = 0;
  std::vector<DueCost> later;
};

struct Lifetime {
  int years = 1;
  double purchase = 0;
  double energy_cost = 0;  ///< sum_{t=1..N} C (1+g)^(t-1)
  double later_cost = 0;   ///< Due within the horizon.
  double resale = 0;
  double total = 0;         ///< purchase + energy_cost + later_cost - resale
  double present_cost = 0;  ///< See `reckon_lifetime`.
};

/// sum_{t=1..N} (1+g)^(t-1) / (1+d)^t: the present value of 1 a year that rises by g.
/// With g = 0 the uniform present value factor of NIST Handbook 135; its escalated factor UPV*
/// also escalates the first year and is (1+g) times this one.
double present_value_of_yearly(const Horizon& horizon);

/// 1 / (1+d)^year.
double present_value_factor(const Horizon& horizon, int year);

///     present_cost = purchase + sum_t C (1+g)^(t-1)/(1+d)^t
///                    + sum later/(1+d)^year - resale/(1+d)^N
/// with C the year's cost.
Lifetime reckon_lifetime(const Horizon& horizon, const Outlay& outlay, double yearly_cost);

/// One purchase against another.
struct Trade {
  double extra_purchase = 0;  ///< Candidate's less the baseline's; exactly 0 where equal.
  double saves_a_year = 0;    ///< Baseline's yearly cost less the candidate's; 0 where equal.
};

/// extra / saves where both are > 0; 0 where nothing extra is paid and nothing lost; else
/// nothing (never).
std::optional<double> payback_years(const Trade& trade);

/// Cheaper to buy, dearer to run: the years it stays ahead, extra / saves where both are < 0.
std::optional<double> overtaken_years(const Trade& trade);

/// The earliest time from which, to the end of the horizon, the running sum of the discounted
/// yearly savings (linear within a year) less the discounted difference of later costs
/// (candidate less baseline) stays at or above the extra purchase. Resale is left out.
std::optional<double> discounted_payback_years(const Horizon& horizon, const Trade& trade,
                                               const std::vector<DueCost>& candidate_later,
                                               const std::vector<DueCost>& baseline_later);

/// The most extra purchase that is earned back by the end of year `within` and stays so to the end
/// of the horizon, as `discounted_payback_years` reckons; below 0 where even a cheaper purchase is
/// not. \pre `within` is from 1 to the horizon's years.
double extra_purchase_earned_back(const Horizon& horizon, int within, double saves_a_year,
                                  const std::vector<DueCost>& candidate_later,
                                  const std::vector<DueCost>& baseline_later);

}  // namespace wattweek::decide
