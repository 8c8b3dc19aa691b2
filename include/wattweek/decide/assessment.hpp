#pragma once
// Start here: a study in, everything that is said about it out. The whole pipeline:
// fold -> plan -> energy -> bills -> lifetime, comparison and notes.

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "wattweek/billing/cost.hpp"
#include "wattweek/calendar/zone.hpp"
#include "wattweek/decide/lifetime.hpp"
#include "wattweek/decide/notes.hpp"
#include "wattweek/decide/payback_target.hpp"
#include "wattweek/decide/progress.hpp"
#include "wattweek/decide/uncertainty.hpp"
#include "wattweek/energy/ledger.hpp"
#include "wattweek/model/study.hpp"

namespace wattweek::decide {

/// What is said about one candidate, over the whole study.
struct CandidateResult {
  energy::Ledger ledger;
  billing::CandidateCost cost;
  units::Energy energy;
  units::Power mean;
  std::optional<double> co2_kg;      ///< Nothing where the study names no grid intensity.
  bool lower_bound = false;          ///< Overloaded at times: the figures are the least it can be.
  std::optional<Lifetime> lifetime;  ///< Nothing without a horizon.
};

/// A candidate against the baseline; `saves_*` a year.
struct ComparisonRow {
  std::size_t candidate = 0;
  double saves_kwh = 0;
  double saves_cost = 0;
  double extra_purchase = 0;
  std::optional<double> payback_years;  ///< Nothing: never.
  std::optional<double> overtaken_years;
  std::optional<double> discounted_payback_years;
  std::optional<double> saves_present_cost;
  std::optional<double> break_even_price_factor;
};

struct Assessment {
  std::vector<calendar::Month> months;
  int days = 0;      ///< Calendar days of the study.
  double hours = 0;  ///< Elapsed hours of the study.
  std::vector<double> band_hours;
  billing::HouseholdBills without;          ///< The household's bills without any candidate.
  std::vector<CandidateResult> candidates;  ///< In the study's order.
  std::size_t baseline = 0;
  std::vector<ComparisonRow> rows;  ///< One for every candidate but the baseline, in order.
  std::vector<Note> notes;
  std::optional<PaybackTargets> targets;   ///< Nothing unless somebody asked; `assess` does not.
  std::optional<Uncertainty> uncertainty;  ///< Nothing unless somebody drew; `assess` does not.
};

/// Reckons a whole study. What only reckoning can show to be wrong with the user's files
/// comes back as diagnostics: a household month that falls below zero, more joint outcomes
/// than can be merged, figures too large to be reckoned.
/// \pre `zone` is the study's zone over its months (see `read::study`).
std::variant<Assessment, std::vector<diag::Diagnostic>> assess(const model::Study& study,
                                                               const calendar::ZoneRules& zone,
                                                               const Progress& progress = {});

}  // namespace wattweek::decide
