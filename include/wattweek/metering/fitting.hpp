#pragma once
// Start here: what a log was measured to be in, everything that a fit says about it out.

#include <optional>
#include <string>
#include <vector>

#include "wattweek/metering/fit.hpp"
#include "wattweek/metering/measured.hpp"

namespace wattweek::metering {

struct Fit {
  double energy_kwh = 0;  ///< Of all kept intervals.
  double mean_w = 0;      ///< 0 where nothing is kept.
  std::vector<Level> levels;
  std::optional<Estimate> idle_w;             ///< Nothing where the log never shows it.
  std::vector<IncrementEstimate> increments;  ///< One of each noted workload.
  std::optional<Residuals> residuals;         ///< Of the regression; nothing without an activity.
  Week week{};
  YearForecast year;
};

/// Fits levels, idle watts, increments, week and year. With `workloads` (those of the activity, in
/// its order) idle and increments come from the regression on their units in use; without any, idle
/// is the mean of the idle level. `meter` widens the year's interval; pass {} where it is not
/// known.
Fit fit(const Measured& measured, const std::vector<std::string>& workloads,
        const MeterError& meter);

}  // namespace wattweek::metering
