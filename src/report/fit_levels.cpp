// At which watts a machine stays, and what idle is.

#include <fmt/format.h>

#include <algorithm>

#include "fit_parts.hpp"
#include "fit_words.hpp"
#include "numbers.hpp"
#include "wattweek/report/words.hpp"

namespace wattweek::report {
namespace {

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

// Steps as coarse as this part of idle hide what works slightly (common practice, no source).
constexpr double kCoarseStep = 0.1;

std::optional<std::string> coarse_words(const FitShown& shown) {
  const double step_w = shown.measurement.measured.resolution_w;
  const auto& idle = shown.fit.idle_w;
  if (!idle || shown.fit.residuals || step_w <= kCoarseStep * idle->value) return std::nullopt;
  return fmt::format(
      "Steps of {} W are coarse beside that: work that adds less than a step counts as idle here. "
      "Note when what is in use (--activity) to tell them apart.",
      rounded(step_w, 4));
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

}  // namespace

Section levels_section(const FitShown& shown) {
  Section section{"What it draws", {}};
  Table table{{{"", Align::left}, {"W"}, {"hours"}, {"part of the time"}}, {}};
  if (shown.meter) table.columns.push_back({"meter off by up to W"});
  double all_hours = 0;
  for (const metering::Level& level : shown.fit.levels) all_hours += level.hours;
  const int decimals = std::min(2, decimals_for({shown.fit.levels.front().watts}));
  for (const metering::Level& level : shown.fit.levels) {
    table.rows.push_back({std::string(state_name(level.state)), fixed(level.watts, decimals),
                          fixed(level.hours, 1), fixed(100 * level.hours / all_hours, 1) + " %"});
    if (shown.meter) table.rows.back().push_back(fixed(shown.meter->at(level.watts), 2));
  }
  section.blocks.push_back(std::move(table));
  section.blocks.push_back(
      Paragraph{fmt::format("Lowest {}, highest {}.", watts(shown.measurement.measured.lowest_w),
                            watts(shown.measurement.measured.highest_w))});
  section.blocks.push_back(Paragraph{idle_words(shown)});
  if (const auto words = coarse_words(shown)) section.blocks.push_back(Paragraph{*words});
  if (const auto words = cannot_tell(shown)) section.blocks.push_back(Paragraph{*words});
  section.blocks.push_back(watts_picture(shown.measurement.measured, shown.fit.levels));
  return section;
}

}  // namespace wattweek::report
