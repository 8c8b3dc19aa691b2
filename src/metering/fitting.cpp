#include "wattweek/metering/fitting.hpp"

#include "wattweek/metering/forecast.hpp"
#include "wattweek/metering/levels.hpp"
#include "wattweek/metering/regression.hpp"

namespace wattweek::metering {

Fit fit(const Measured& measured, const std::vector<std::string>& workloads,
        const MeterError& meter) {
  Fit result;
  result.energy_kwh = measured.kept.joules / 3.6e6;
  if (measured.kept.seconds > 0) result.mean_w = measured.kept.mean_w();
  result.levels = levels_of(measured);
  if (workloads.empty()) {
    result.idle_w = idle_of(result.levels, measured);
  } else {
    Regression regression = regress(measured, workloads, result.levels);
    result.idle_w = regression.idle_w;
    result.increments = std::move(regression.increments);
    result.residuals = regression.residuals;
  }
  result.week = week_of(measured);
  result.year = forecast(measured, result.week, meter);
  return result;
}

}  // namespace wattweek::metering
