#pragma once
// Devices put to rest at certain hours: what that saves, and what goes unserved for it.

#include <cstddef>
#include <optional>
#include <variant>
#include <vector>

#include "wattweek/decide/assessment.hpp"

namespace wattweek::decide {

/// Which devices of a candidate rest, every day, and how.
struct RestPlan {
  std::size_t candidate = 0;
  std::vector<std::size_t> devices;  ///< Never empty.
  model::HourSpan hours;
  model::RestState state = model::RestState::off;
};

/// Do all of these devices have sleep watts?
bool can_sleep(const model::Candidate& candidate, const std::vector<std::size_t>& devices);

/// A candidate over the whole study, without or with the rest.
struct RestFigures {
  double energy_kwh = 0;
  double cost = 0;
  double resting_device_hours = 0;            ///< Asleep or off, all devices together.
  std::vector<energy::UnitHours> unit_hours;  ///< By workload.
};

/// `saves_*` a year.
struct RestResult {
  RestFigures without;
  RestFigures with;
  double saves_kwh = 0;
  double saves_cost = 0;
  std::optional<double> saves_present_cost;  ///< Over the horizon; nothing without one.
};

/// Reckons the candidate with the rest added after the devices' own rests, of which the first that
/// holds wins. The household's own use stays as it is today.
/// \pre `assess` gave `today` for the study; where the state is sleep, all devices can.
std::variant<RestResult, std::vector<diag::Diagnostic>> rest(const model::Study& study,
                                                             const calendar::ZoneRules& zone,
                                                             const Assessment& today,
                                                             const RestPlan& plan);

}  // namespace wattweek::decide
