#pragma once
// One study reckoned again and again with other figures in it: totals alone, nothing folded twice.

#include <Eigen/Core>
#include <cstdint>
#include <memory>
#include <optional>
#include <vector>

#include "wattweek/billing/bill.hpp"
#include "wattweek/calendar/study_fold.hpp"
#include "wattweek/energy/ledger.hpp"
#include "wattweek/model/study.hpp"

namespace wattweek::decide {

/// What no scenario changes: the calendar, and which situations each device meets. To be shared
/// among threads.
struct ScenarioPlan {
  calendar::FoldedStudy folded;
  std::vector<billing::BillingPeriod> periods;
  std::vector<energy::CandidatePlan> candidates;
};

ScenarioPlan plan_scenarios(const model::Study& study, const calendar::ZoneRules& zone);

/// What the ranking looks at, for one candidate. The present cost is 0 without a horizon.
struct Totals {
  double energy_kwh = 0;
  double cost = 0;  ///< Of the whole study.
  double present_cost = 0;
};

/// A device and situation in which a scenario has too many joint outcomes.
struct ScenarioRefused {
  std::size_t candidate = 0;
  energy::TooManyOutcomes outcomes;
};

/// Reckons scenarios of one study; keeps its work space from call to call. One for each thread.
class ScenarioReckoner {
 public:
  /// `plan` must outlive the reckoner.
  explicit ScenarioReckoner(const ScenarioPlan& plan);
  /// Of these candidates alone; the totals of all others are 0.
  ScenarioReckoner(const ScenarioPlan& plan, std::vector<std::size_t> candidates);
  ~ScenarioReckoner();
  ScenarioReckoner(const ScenarioReckoner&) = delete;
  ScenarioReckoner& operator=(const ScenarioReckoner&) = delete;

  /// Reckons a study that differs from the planned one in figures only, at its midpoints; all that
  /// depends on hours, windows, bands and who runs what must be the same. A household that was
  /// metered with more than it then has counts as 0 in that month.
  [[nodiscard]] std::optional<ScenarioRefused> reckon(const model::Study& study,
                                                      std::vector<Totals>& totals);

  /// A candidate's totals in the scenario that was reckoned last, with every band and block price
  /// times a factor: what that leaves alone is not reckoned again.
  /// \pre `reckon` has been called, has not refused, and reckons this candidate.
  Totals at_prices(double factor, std::size_t candidate) const;

  /// Joint outcomes formed so far; see `power::DrawReckoner`.
  std::uint64_t outcomes_formed() const;

 private:
  class Inside;
  std::unique_ptr<Inside> inside_;
};

}  // namespace wattweek::decide
