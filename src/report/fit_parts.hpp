#pragma once
// Pieces of what is said about a log that several forms of it share.

#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "document.hpp"
#include "wattweek/report/fit.hpp"

namespace wattweek::report {

/// `off`, `sleep`, `idle`, `active`.
std::string_view state_name(metering::State state);

/// Rows that give no value, by reason, and restarts of a counter.
std::vector<std::pair<std::string, std::size_t>> dropped_rows(const FitShown& shown);

/// `2027-01-31T18:30:00+01:00`, in the zone of the week, with a fraction where there is one.
std::string moment_text(const FitShown& shown, logs::Microseconds at_us);

/// `2027-01-31 18:30`, the same for reading.
std::string clock_text(const FitShown& shown, logs::Microseconds at_us);

/// Limits of error of the whole log's energy. \pre the log has a meter error
double meter_kwh(const FitShown& shown);

/// The part of the time between the first and the last row that is known, 0 to 1.
double covered_part(const metering::Coverage& coverage);

/// Limits of error of what a workload adds: a part of it, since what the meter is off by in watts
/// is the same before and while it is in use. \pre the log has a meter error
double meter_increment_w(const FitShown& shown, const metering::Estimate& each_w);

/// The parts of the text.
Section coverage_section(const FitShown& shown);
Section levels_section(const FitShown& shown);
Section increments_section(const FitShown& shown);
Section fitted_week_section(const FitShown& shown);
Section year_section(const FitShown& shown);

/// How long the watts stay where, with the levels named.
/// \pre there is time in the histogram
Picture watts_picture(const metering::Measured& measured,
                      const std::vector<metering::Level>& levels);

}  // namespace wattweek::report
