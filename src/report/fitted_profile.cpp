// A fit as a profile file.

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "fit_parts.hpp"
#include "numbers.hpp"
#include "wattweek/diag/printable.hpp"

namespace wattweek::report {
namespace {

/// A basic string of TOML.
std::string quoted(const std::string& text) {
  std::string quoted = "\"";
  for (const char c : diag::printable(text)) {
    if (c == '"' || c == '\\') quoted += '\\';
    quoted += c;
  }
  return quoted + "\"";
}

/// To a millionth of a watt.
std::string watts(double value) { return rounded(value, 6); }

/// `[12.1, 12.5]`: the even distribution with the same standard deviation.
std::string range_of(const metering::Estimate& estimate) {
  const double half = std::sqrt(3.0) * estimate.standard_error;
  return fmt::format("[{}, {}]", watts(std::max(0.0, estimate.value - half)),
                     watts(estimate.value + half));
}

/// Off and sleep watts, where the log shows them.
std::string resting_watts(const FitShown& shown) {
  std::string text;
  for (const metering::Level& level : shown.fit.levels) {
    if (level.state == metering::State::off || level.state == metering::State::sleep) {
      text += fmt::format("{} = {}\n", state_name(level.state), watts(level.watts));
    }
  }
  return text;
}

std::string week_lines(const metering::Week& week) {
  std::string text = "week = [ # W, from Monday 00:00, a line for each day\n";
  for (std::size_t hour = 0; hour < week.size(); ++hour) {
    text += fmt::format("{}{},", hour % 24 == 0 ? "  " : " ", watts(*week[hour]));
    if (hour % 24 == 23) text += "\n";
  }
  return text + "]\n";
}

std::string increment_lines(const metering::Fit& fit) {
  std::string text;
  for (const metering::IncrementEstimate& increment : fit.increments) {
    const std::string key = quoted(increment.workload);
    if (increment.each_w) {
      text += fmt::format("{} = {}\n", key, range_of(*increment.each_w));
    } else {
      text += fmt::format("# {}: the log cannot tell its watts\n", key);
    }
  }
  return text;
}

std::string header(const FitShown& shown, const std::string& name) {
  const metering::Coverage& coverage = shown.measurement.coverage;
  return fmt::format("# Fitted by wattweek to {}:\n# {} h known from {} to {} ({}).\nname = {}\n",
                     diag::printable(shown.log_name), fixed(coverage.covered_hours, 1),
                     clock_text(shown, coverage.first_us), clock_text(shown, coverage.last_us),
                     shown.zone_name, quoted(name));
}

}  // namespace

std::string fitted_profile(const FitShown& shown, ProfileKind kind, const std::string& name) {
  std::string text = header(shown, name);
  if (shown.meter) text += fmt::format("meter = \"{}\"\n", kFittedMeter);
  text += "\n[watts]\n" + resting_watts(shown);
  if (kind == ProfileKind::week) return text + week_lines(shown.fit.week);
  text += fmt::format("idle = {} # +-sqrt(3) standard errors\n", range_of(*shown.fit.idle_w));
  const std::string increments = increment_lines(shown.fit);
  return increments.empty() ? text
                            : text + "\n[increments] # W for each unit in use\n" + increments;
}

std::string meter_entry(const FitShown& shown) {
  const double part = shown.meter->at(shown.fit.mean_w) / shown.fit.mean_w;
  return fmt::format("[[meter]]\nid = \"{}\"\nscale = [{}, {}]\n", kFittedMeter,
                     rounded(std::max(1 - part, 0.001), 4), rounded(1 + part, 4));
}

}  // namespace wattweek::report
