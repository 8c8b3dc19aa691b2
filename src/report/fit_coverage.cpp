// How much of the time a log tells about.

#include <fmt/format.h>

#include <cmath>

#include "fit_parts.hpp"
#include "fit_words.hpp"
#include "numbers.hpp"
#include "wattweek/report/words.hpp"

namespace wattweek::report {
namespace {

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

std::optional<std::string> step_words(const FitShown& shown) {
  const metering::Coverage& coverage = shown.measurement.coverage;
  if (coverage.longest_step_s == 0) return std::nullopt;  // A single row.
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

}  // namespace

double covered_part(const metering::Coverage& coverage) {
  return coverage.span_hours() > 0 ? coverage.covered_hours / coverage.span_hours() : 0;
}

Section coverage_section(const FitShown& shown) {
  Section section{"How much is known", {}};
  section.blocks.push_back(Paragraph{span_words(shown)});
  section.blocks.push_back(Paragraph{rows_words(shown)});
  if (const auto words = step_words(shown)) section.blocks.push_back(Paragraph{*words});
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

}  // namespace wattweek::report
