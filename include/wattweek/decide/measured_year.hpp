#pragma once
// What a machine whose week was measured costs in a year under a contract.

#include <chrono>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "wattweek/calendar/zone.hpp"
#include "wattweek/decide/notes.hpp"
#include "wattweek/diag/diagnostic.hpp"
#include "wattweek/model/profile.hpp"
#include "wattweek/model/tariff.hpp"
#include "wattweek/units/range.hpp"

namespace wattweek::decide {

/// A measured week, and how far the mean of weeks may lie from it.
struct MeasuredWeek {
  model::WeekOfWatts watts{};
  /// Factors on all of its watts, low and high; nothing where they are not known.
  std::optional<units::Range<double>> factors{};
};

struct MeasuredYear {
  std::chrono::year year;
  double energy_kwh = 0;
  double cost = 0;                            ///< In the tariff's currency, taxes included.
  std::optional<units::Range<double>> costs;  ///< At the low and the high factor.
  std::vector<Note> notes;                    ///< Those on the contract.
};

/// Reckons a calendar year of the measured week by the rules of a study: the machine is all that
/// there is, besides a household that uses nothing. Diagnostics as `assess` has them.
/// \pre `zone` covers the year; `time_zone` is its name
std::variant<MeasuredYear, std::vector<diag::Diagnostic>> measured_year(
    const MeasuredWeek& week, const model::Tariff& tariff, const std::string& time_zone,
    const calendar::ZoneRules& zone, std::chrono::year year);

}  // namespace wattweek::decide
