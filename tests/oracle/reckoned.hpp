#pragma once
// Everything that is said about a study, as bare numbers with their units in the name: what the
// dumb reckoning answers, and what the engine's answer is held against.

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "wattweek/model/window.hpp"

namespace wattweek::oracle {

struct BandLine {
  double kwh = 0;
  double amount = 0;
};

/// One month's bill; amounts before tax but for `tax` and `total`.
struct Bill {
  double kwh = 0;
  double standing = 0;
  std::vector<BandLine> bands;
  double blocks = 0;
  double minimum_top_up = 0;
  double tax = 0;
  double total = 0;
};

struct MonthOfCandidate {
  double energy_kwh = 0;
  double cost = 0;
};

struct BandOfCandidate {
  double energy_kwh = 0;
  double cost = 0;
};

struct StateOfCandidate {
  double hours = 0;  ///< Device-hours.
  double energy_kwh = 0;
};

struct WorkloadOfCandidate {
  double unit_hours = 0;
  double unserved_unit_hours = 0;
  double energy_kwh = 0;
  double cost = 0;
};

struct DeviceOfCandidate {
  double energy_kwh = 0;
  double mean_w = 0;
  double highest_w = 0;
  double overload_hours = 0;
};

struct LifetimeOfCandidate {
  double purchase = 0;
  double energy_cost = 0;
  double later_cost = 0;
  double resale = 0;
  double total = 0;
  double present_cost = 0;
};

/// In the order in which results list them.
enum State { kOff, kSleep, kIdle, kActive, kStateCount };

struct CandidateReckoned {
  double energy_kwh = 0;
  double mean_w = 0;
  double highest_w = 0;
  double cost = 0;
  double blocks_cost = 0;
  double minimum_cost = 0;
  std::optional<double> co2_kg;
  bool lower_bound = false;
  std::vector<MonthOfCandidate> months;
  std::vector<BandOfCandidate> bands;
  std::array<StateOfCandidate, kStateCount> states;
  std::vector<WorkloadOfCandidate> workloads;
  double base_kwh = 0;
  double base_cost = 0;
  std::vector<DeviceOfCandidate> devices;
  std::optional<LifetimeOfCandidate> lifetime;
  std::vector<Bill> bills;
};

struct RowReckoned {
  std::size_t candidate = 0;
  double saves_kwh = 0;
  double saves_cost = 0;
  double extra_purchase = 0;
  std::optional<double> payback_years;
  std::optional<double> overtaken_years;
  std::optional<double> discounted_payback_years;
  std::optional<double> saves_present_cost;
  std::optional<double> break_even_price_factor;
};

struct Reckoned {
  /// A household month that falls below zero when the candidate that it includes is taken off:
  /// the study is wrong, and nothing else here is set.
  bool household_below_zero = false;
  int days = 0;
  double hours = 0;
  std::vector<double> month_hours;
  std::vector<double> band_hours;
  std::vector<Bill> without;
  std::vector<CandidateReckoned> candidates;
  std::vector<RowReckoned> rows;
  std::vector<diag::Place> windows_that_never_hold;  ///< Of uses, rests and bands.
};

}  // namespace wattweek::oracle
