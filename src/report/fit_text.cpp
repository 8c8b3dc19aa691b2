#include <fmt/format.h>

#include "fit_parts.hpp"
#include "fit_words.hpp"
#include "numbers.hpp"
#include "wattweek/report/cautions.hpp"

namespace wattweek::report {
namespace {

// More than 5 %; 1 - 0.95 is a little more than 0.05.
constexpr double kMuchDropped = 0.05 + 1e-9;

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

Section meter_section(const FitShown& shown) {
  const metering::MeterError& meter = *shown.meter;
  return {"The meter",
          {Paragraph{fmt::format(
              "Up to {} % of the reading and {} W off: {} of the {} kWh. 'Give or take' "
              "is what the log leaves open; the meter's error stands beside it, and the year's "
              "range holds both.",
              rounded(meter.percent, 2), rounded(meter.watts, 3), kwh(meter_kwh(shown)),
              fixed(shown.fit.energy_kwh, decimals_for({shown.fit.energy_kwh})))}}};
}

}  // namespace

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
