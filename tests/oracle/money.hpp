#pragma once
// The household's bills with and without a candidate, and what follows from them: every rule
// written out on bare numbers, bills reckoned twice and subtracted.

#include <vector>

#include "reckoned.hpp"
#include "wattweek/model/study.hpp"

namespace wattweek::oracle {

/// The time and the household's own energy of one month.
struct BilledMonth {
  std::chrono::year_month month;
  int days = 0;
  std::vector<double> band_hours;
  double household_kwh = 0;
};

/// A candidate's energy: `[month][band][cause]`, cause 0 being the base, 1 + w the workload w.
using EnergyTable = std::vector<std::vector<std::vector<double>>>;

/// How prices are scaled and whether the minimum counts.
struct BillOptions {
  double price_factor = 1;
  bool with_minimum = true;
};

Bill bill_of(const model::Tariff& tariff, const BilledMonth& month,
             const std::vector<double>& extra_kwh, BillOptions options = {});

/// Household kWh of a month as the user gave them.
double metered_kwh(const model::Household& household, std::chrono::year_month month);

/// Fills in all money of `candidate` but its lifetime.
void reckon_cost(const model::Tariff& tariff, const std::vector<BilledMonth>& months,
                 const EnergyTable& energy, CandidateReckoned& candidate);

/// The study's cost of a candidate where all prices are multiplied.
double cost_at(const model::Tariff& tariff, const std::vector<BilledMonth>& months,
               const EnergyTable& energy, double price_factor);

/// The price factors in (0, 1e6) at which a bill with or without the candidate leaves the
/// minimum; between them `cost_at` is linear.
std::vector<double> minimum_kinks(const model::Tariff& tariff,
                                  const std::vector<BilledMonth>& months,
                                  const EnergyTable& energy);

}  // namespace wattweek::oracle
