#pragma once
// What a meter log says, as text and as JSON; and as files that a study can name.

#include <optional>
#include <string>
#include <vector>

#include "wattweek/calendar/zone.hpp"
#include "wattweek/decide/measured_year.hpp"
#include "wattweek/logs/read_log.hpp"
#include "wattweek/metering/fitting.hpp"
#include "wattweek/metering/measuring.hpp"
#include "wattweek/report/report.hpp"

namespace wattweek::report {

/// A log, what was read and measured of it, and what a fit says.
struct FitShown {
  std::string log_name;
  std::string zone_name;
  const calendar::ZoneRules& zone;
  const logs::LogReport& log;
  const metering::Measurement& measurement;
  const metering::Fit& fit;
  std::optional<metering::MeterError> meter{};
  /// Under a contract, with its name and currency; nothing where none was asked for.
  struct UnderContract {
    std::string tariff;
    std::string currency;
    decide::MeasuredYear year;
  };
  std::optional<UnderContract> contract{};
};

/// How much of the time is known, what the machine draws, its week and year.
std::string fit_text(const FitShown& shown, const Style& style);

/// JSON of the format `wattweek-fit-1`.
std::string fit_json(const FitShown& shown);

/// What the profile of a fit is written as.
enum class ProfileKind {
  week,        ///< Watts by hour of the week.
  increments,  ///< Idle watts, and what each workload adds.
};

/// A profile file that `estimate` reads as it is. Idle and increments are ranges of +-sqrt(3)
/// standard errors: the even distribution of the same standard deviation, from 0 on. With `meter`
/// it names a meter of that id.
/// \pre every hour of the week was seen, or idle is known
std::string fitted_profile(const FitShown& shown, ProfileKind kind, const std::string& name);

/// The id of the meter in such a profile.
inline constexpr std::string_view kFittedMeter = "plug";

/// `[[meter]]` of a study, for the limits of error at the log's mean watts: what a profile that
/// names the meter needs. \pre the log has a meter error and a mean
std::string meter_entry(const FitShown& shown);

}  // namespace wattweek::report
