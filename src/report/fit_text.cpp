#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "fit_parts.hpp"
#include "numbers.hpp"
#include "wattweek/report/cautions.hpp"
#include "wattweek/report/words.hpp"
#include "week_picture.hpp"

namespace wattweek::report {
namespace {

// More than 5 %; 1 - 0.95 is a little more than 0.05.
constexpr double kMuchDropped = 0.05 + 1e-9;

std::string watts(double value) { return fixed(value, decimals_for({value})) + " W"; }
std::string kwh(double value) { return fixed(value, decimals_for({value})) + " kWh"; }
std::string hours(double value) { return fixed(value, decimals_for({value})) + " h"; }

/// `2 s`, `15 min`, `22 h`, `3 days`.
std::string duration(double seconds) {
  if (seconds < 120) return rounded(seconds, 1) + " s";
  if (seconds < 7'200) return rounded(seconds / 60, 1) + " min";
  if (seconds < 48 * 3'600) return rounded(seconds / 3'600, 1) + " h";
  return rounded(seconds / 86'400, 1) + " days";
}

double covered_part(const metering::Coverage& coverage) {
  return coverage.span_hours() > 0 ? coverage.covered_hours / coverage.span_hours() : 0;
}

std::string percent(double part) {
  // What is not quite all is never called all.
  const double shown = part < 1 && part > 0.999 ? 99.9 : 100 * part;
  return rounded(shown, 1) + " %";
}

std::string title_of(const FitShown& shown) {
  const metering::Coverage& coverage = shown.measurement.coverage;
  if (coverage.covered_hours == 0) return "No time in this log can be told the watts of.";
  return fmt::format("{} on average over {}: {}.", watts(shown.fit.mean_w),
                     duration(coverage.covered_hours * 3'600), kwh(shown.fit.energy_kwh));
}

std::optional<std::string> bias(const metering::Coverage& coverage) {
  const double part = 1 - covered_part(coverage);
  if (coverage.span_hours() == 0 || part <= kMuchDropped) return std::nullopt;
  return fmt::format(
      "{} of the time between the first and the last row is not known, so that the mean may be "
      "biased.",
      percent(part));
}

std::string rows_words(const FitShown& shown) {
  std::vector<std::string> parts;
  for (const auto& [reason, rows] : dropped_rows(shown)) {
    parts.push_back(fmt::format("{} {}", rows, reason));
  }
  return fmt::format("{} read, {} used{}{}.", counted(shown.log.rows, "row"), shown.log.used,
                     parts.empty() ? "" : "; dropped: ", listed(parts));
}

std::string span_words(const FitShown& shown) {
  const metering::Coverage& coverage = shown.measurement.coverage;
  return fmt::format("{} to {} ({}): {}, of which {} are known, {}.",
                     clock_text(shown, coverage.first_us), clock_text(shown, coverage.last_us),
                     shown.zone_name, hours(coverage.span_hours()), hours(coverage.covered_hours),
                     percent(covered_part(coverage)));
}

std::string step_words(const FitShown& shown) {
  const metering::Coverage& coverage = shown.measurement.coverage;
  std::string text =
      fmt::format("A row every {} as a rule, the longest time without one {} from {}.",
                  duration(coverage.typical_step_s), duration(coverage.longest_step_s),
                  clock_text(shown, coverage.longest_step_at_us));
  if (coverage.change_only) {
    text += " Rows come only when the value moved, so that each holds until the next.";
  } else if (std::isfinite(coverage.gap_s)) {
    text += fmt::format(" Holes longer than {} are left out (--gap).", duration(coverage.gap_s));
  }
  const double resolution = shown.measurement.measured.resolution_w;
  if (resolution > 0)
    text += fmt::format(" The meter shows steps of {} W.", rounded(resolution, 4));
  return text;
}

std::optional<std::string> zero_words(const FitShown& shown) {
  const metering::Coverage& coverage = shown.measurement.coverage;
  if (coverage.longest_zero_s < 3'600) return std::nullopt;
  return fmt::format(
      "The longest time at exactly 0 W is {} from {}: switched off, or nothing received? The log "
      "does not say.",
      duration(coverage.longest_zero_s), clock_text(shown, coverage.longest_zero_at_us));
}

std::string idle_words(const FitShown& shown) {
  const auto& idle = shown.fit.idle_w;
  if (!idle) return "Idle watts cannot be told from this log.";
  const double half = 1.96 * idle->standard_error;
  const int decimals = half >= 1 ? 1 : half >= 0.1 ? 2 : 3;
  std::string text = fmt::format("Idle: {} W, give or take {} W (95 %)",
                                 fixed(idle->value, decimals), fixed(half, decimals));
  if (shown.meter) {
    text +=
        fmt::format(", and the meter's own error of up to {}", watts(shown.meter->at(idle->value)));
  }
  return text + ".";
}

std::optional<std::string> cannot_tell(const FitShown& shown) {
  if (!shown.meter) return std::nullopt;
  std::vector<std::string> lost;
  for (const metering::Level& level : shown.fit.levels) {
    if (shown.meter->at(level.watts) >= level.watts / 2) {
      lost.push_back(fmt::format("{} ({})", state_name(level.state), watts(level.watts)));
    }
  }
  if (lost.empty()) return std::nullopt;
  return fmt::format(
      "At such low watts the meter cannot tell: half of the reading or more may be its error at "
      "{}.",
      listed(lost));
}

std::string estimate_words(const metering::IncrementEstimate& increment) {
  if (!increment.each_w) return "-";
  return fixed(increment.each_w->value, 2);
}

std::optional<std::string> in_step_words(const metering::IncrementEstimate& increment) {
  if (increment.each_w) return std::nullopt;
  if (!increment.in_step_with.empty()) {
    return fmt::format(
        "{} is always in use in step with {}: the log cannot tell whose watts they are. Let one "
        "run alone for a while, or leave it out.",
        increment.workload, listed(increment.in_step_with));
  }
  if (increment.in_step_with_idle) {
    return fmt::format("{} is in use all the time: the log cannot tell its watts from idle.",
                       increment.workload);
  }
  return fmt::format("{} is never in use in this log.", increment.workload);
}

std::string residual_words(const metering::Residuals& residuals) {
  return fmt::format(
      "What is noted explains {} of the ups and downs. What is left has a standard deviation of "
      "{}, "
      "{} at most. It is alike from one time to the next ({} on a scale to 1); the standard errors "
      "allow for that (Newey-West, over {}).",
      percent(residuals.explained), watts(residuals.sd_w), watts(residuals.largest_w),
      fixed(residuals.lag_one, 2), duration(residuals.bandwidth_s));
}

std::string range_words(double low, double high) {
  const int decimals = decimals_for({high});
  return fmt::format("{} to {}", fixed(low, decimals), fixed(high, decimals));
}

}  // namespace

Section coverage_section(const FitShown& shown) {
  Section section{"How much is known", {}};
  section.blocks.push_back(Paragraph{span_words(shown)});
  section.blocks.push_back(Paragraph{rows_words(shown)});
  section.blocks.push_back(Paragraph{step_words(shown)});
  if (const auto words = zero_words(shown)) section.blocks.push_back(Paragraph{*words});
  if (shown.log.sorted_whole) {
    section.blocks.push_back(
        Paragraph{"Rows stood far out of order: all were held in memory and sorted."});
  } else if (shown.log.out_of_order > 0) {
    section.blocks.push_back(Paragraph{fmt::format(
        "{} stood behind a later one and {} put in order.", counted(shown.log.out_of_order, "row"),
        shown.log.out_of_order == 1 ? "was" : "were")});
  }
  return section;
}

Section levels_section(const FitShown& shown) {
  Section section{"What it draws", {}};
  Table table{{{"", Align::left}, {"W"}, {"hours"}, {"part of the time"}}, {}};
  double all_hours = 0;
  for (const metering::Level& level : shown.fit.levels) all_hours += level.hours;
  const int decimals = std::min(2, decimals_for({shown.fit.levels.front().watts}));
  for (const metering::Level& level : shown.fit.levels) {
    table.rows.push_back({std::string(state_name(level.state)), fixed(level.watts, decimals),
                          fixed(level.hours, 1), fixed(100 * level.hours / all_hours, 1) + " %"});
  }
  section.blocks.push_back(std::move(table));
  section.blocks.push_back(
      Paragraph{fmt::format("Lowest {}, highest {}.", watts(shown.measurement.measured.lowest_w),
                            watts(shown.measurement.measured.highest_w))});
  section.blocks.push_back(Paragraph{idle_words(shown)});
  if (const auto words = cannot_tell(shown)) section.blocks.push_back(Paragraph{*words});
  section.blocks.push_back(watts_picture(shown.measurement.measured, shown.fit.levels));
  return section;
}

Section increments_section(const FitShown& shown) {
  Section section{"What uses add", {}};
  Table table{{{"", Align::left}, {"W for each unit"}, {"standard error"}, {"unit-hours"}}, {}};
  List list;
  for (const metering::IncrementEstimate& increment : shown.fit.increments) {
    const auto& each = increment.each_w;
    table.rows.push_back({increment.workload, estimate_words(increment),
                          each ? fixed(each->standard_error, 3) : "-",
                          fixed(increment.unit_hours, 1)});
    if (auto words = in_step_words(increment)) list.items.push_back(std::move(*words));
  }
  section.blocks.push_back(std::move(table));
  if (!list.items.empty()) section.blocks.push_back(std::move(list));
  if (shown.fit.residuals)
    section.blocks.push_back(Paragraph{residual_words(*shown.fit.residuals)});
  return section;
}

Section year_section(const FitShown& shown) {
  Section section{"The year", {}};
  const metering::YearForecast& year = shown.fit.year;
  if (!year.energy_kwh) {
    section.blocks.push_back(
        Paragraph{"No year can be told: some hour of the week was never seen."});
    return section;
  }
  std::string text =
      fmt::format("If the year is like these weeks, it takes {}", kwh(*year.energy_kwh));
  if (year.low && year.high) {
    text += fmt::format(" ({}, 95 %, from {})", range_words(*year.low, *year.high),
                        counted(year.weeks, "full week"));
  } else {
    text += "; how far that can be trusted is not known from less than two weeks";
  }
  section.blocks.push_back(Paragraph{text + "."});
  if (shown.contract) {
    const decide::MeasuredYear& reckoned = shown.contract->year;
    const std::string& currency = shown.contract->currency;
    std::string cost =
        fmt::format("Under {} that adds {} to the bill of {}", shown.contract->tariff,
                    money(reckoned.cost, currency), static_cast<int>(reckoned.year));
    if (reckoned.costs) {
      cost += fmt::format(" ({} to {})", amount(reckoned.costs->low, currency),
                          amount(reckoned.costs->high, currency));
    }
    section.blocks.push_back(Paragraph{cost + ", in a household that uses nothing else."});
  }
  return section;
}

Section fitted_week_section(const FitShown& shown) {
  Section section{"The week", {}};
  Eigen::MatrixXd mean_w(7, 24);
  for (Eigen::Index hour = 0; hour < 168; ++hour) {
    mean_w(hour / 24, hour % 24) =
        shown.fit.week[static_cast<std::size_t>(hour)].value_or(std::nan(""));
  }
  const double most = mean_w.maxCoeff<Eigen::PropagateNumbers>();
  const double least = mean_w.minCoeff<Eigen::PropagateNumbers>();
  if (!(most > least)) {
    section.blocks.push_back(Paragraph{"The same watts in all hours of the week."});
  } else {
    section.blocks.push_back(hours_picture(mean_w, "Mean watts by hour of the week:"));
  }
  return section;
}

Section meter_section(const FitShown& shown) {
  const metering::MeterError& meter = *shown.meter;
  return {"The meter",
          {Paragraph{fmt::format(
              "Up to {} % of the reading and {} W off: {} of the {} kWh. All of the above is as "
              "the meter says; only the year's range holds its error.",
              rounded(meter.percent, 2), rounded(meter.watts, 3), kwh(meter_kwh(shown)),
              fixed(shown.fit.energy_kwh, decimals_for({shown.fit.energy_kwh})))}}};
}

std::string fit_text(const FitShown& shown, const Style& style) {
  Document document;
  document.title = title_of(shown);
  if (const auto words = bias(shown.measurement.coverage)) {
    document.sections.push_back({"", {Paragraph{*words}}});
  }
  document.sections.push_back(coverage_section(shown));
  if (shown.measurement.coverage.covered_hours > 0) {
    if (!shown.fit.levels.empty()) document.sections.push_back(levels_section(shown));
    if (!shown.fit.increments.empty()) document.sections.push_back(increments_section(shown));
    document.sections.push_back(fitted_week_section(shown));
    document.sections.push_back(year_section(shown));
    if (shown.meter) document.sections.push_back(meter_section(shown));
  }
  document.sections.push_back({"Bear in mind", {Paragraph{std::string(measuring_caution())}}});
  return lay_out_text(document, style);
}

}  // namespace wattweek::report
