#include <fmt/format.h>

#include "fit_parts.hpp"
#include "json_parts.hpp"
#include "wattweek/report/fit.hpp"

namespace wattweek::report {
namespace {

Json dropped_part(const FitShown& shown) {
  Json part = Json::object();
  for (const auto& [reason, rows] : dropped_rows(shown)) part[reason] = rows;
  return part;
}

Json log_part(const FitShown& shown) {
  const metering::Coverage& coverage = shown.measurement.coverage;
  return {{"rows", shown.log.rows},
          {"used", shown.log.used},
          {"dropped", dropped_part(shown)},
          {"first", moment_text(shown, coverage.first_us)},
          {"last", moment_text(shown, coverage.last_us)},
          {"span_hours", number(coverage.span_hours())},
          {"covered_hours", number(coverage.covered_hours)},
          {"longest_gap_s", number(coverage.longest_step_s)},
          {"typical_step_s", number(coverage.typical_step_s)},
          {"resolution_w", number(shown.measurement.measured.resolution_w)},
          {"change_only", coverage.change_only}};
}

Json levels_part(const FitShown& shown) {
  Json part = Json::array();
  for (const metering::Level& level : shown.fit.levels) {
    part.push_back({{"state", state_name(level.state)},
                    {"watts", number(level.watts)},
                    {"hours", number(level.hours)}});
    if (shown.meter) part.back()["meter_w"] = number(shown.meter->at(level.watts));
  }
  return part;
}

Json estimate_part(const std::optional<metering::Estimate>& estimate, const char* value) {
  const auto figure = [](double x) { return number(x); };
  return {{value, estimate ? figure(estimate->value) : Json()},
          {"standard_error", estimate ? figure(estimate->standard_error) : Json()}};
}

Json increments_part(const FitShown& shown) {
  Json part = Json::array();
  for (const metering::IncrementEstimate& increment : shown.fit.increments) {
    Json row = {{"workload", increment.workload}};
    row.update(estimate_part(increment.each_w, "each_w"));
    row["unit_hours"] = number(increment.unit_hours);
    if (!increment.each_w) {
      row["in_step_with"] = increment.in_step_with;
      row["in_step_with_idle"] = increment.in_step_with_idle;
    } else if (shown.meter) {
      row["meter_w"] = number(meter_increment_w(shown, *increment.each_w));
    }
    part.push_back(row);
  }
  return part;
}

Json week_part(const metering::Week& week) {
  Json part = Json::array();
  for (const auto& watts : week) part.push_back(number(watts));
  return part;
}

Json meter_part(const FitShown& shown) {
  const metering::MeterError& meter = *shown.meter;
  const metering::Fit& fit = shown.fit;
  return {{"percent", number(meter.percent)},
          {"watts", number(meter.watts)},
          {"energy_kwh", number(meter_kwh(shown))},
          {"mean_w", number(meter.at(fit.mean_w))},
          {"idle_w", fit.idle_w ? number(meter.at(fit.idle_w->value)) : Json()}};
}

Json cost_part(const FitShown::UnderContract& contract) {
  const decide::MeasuredYear& year = contract.year;
  return {{"tariff", contract.tariff},
          {"currency", contract.currency},
          {"year", static_cast<int>(year.year)},
          {"energy_kwh", number(year.energy_kwh)},
          {"cost", number(year.cost)},
          {"low", year.costs ? number(year.costs->low) : Json()},
          {"high", year.costs ? number(year.costs->high) : Json()}};
}

Json residuals_part(const metering::Residuals& residuals) {
  return {{"sd_w", number(residuals.sd_w)},
          {"lag_one", number(residuals.lag_one)},
          {"largest_w", number(residuals.largest_w)},
          {"bandwidth_s", number(residuals.bandwidth_s)},
          {"explained", number(residuals.explained)}};
}

}  // namespace

std::string fit_json(const FitShown& shown) {
  const metering::Fit& fit = shown.fit;
  const metering::Measured& measured = shown.measurement.measured;
  Json json = {{"format", "wattweek-fit-1"},
               {"log", log_part(shown)},
               {"energy_kwh", number(fit.energy_kwh)},
               {"mean_w", number(fit.mean_w)},
               {"lowest_w", number(measured.lowest_w)},
               {"highest_w", number(measured.highest_w)},
               {"levels", levels_part(shown)},
               {"idle_w", estimate_part(fit.idle_w, "value")},
               {"increments", increments_part(shown)},
               {"week", week_part(fit.week)},
               {"year",
                {{"energy_kwh", number(fit.year.energy_kwh)},
                 {"low", number(fit.year.low)},
                 {"high", number(fit.year.high)}}}};
  if (fit.residuals) json["residuals"] = residuals_part(*fit.residuals);
  if (shown.meter) json["meter_error"] = meter_part(shown);
  if (shown.contract) json["cost"] = cost_part(*shown.contract);
  return json_text(json);
}

}  // namespace wattweek::report
