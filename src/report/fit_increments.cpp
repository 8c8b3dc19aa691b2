// What each workload adds, and what is left unexplained.

#include <fmt/format.h>

#include "fit_parts.hpp"
#include "fit_words.hpp"
#include "numbers.hpp"
#include "wattweek/report/words.hpp"

namespace wattweek::report {
namespace {

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

}  // namespace

Section increments_section(const FitShown& shown) {
  Section section{"What uses add", {}};
  Table table{{{"", Align::left}, {"W for each unit"}, {"standard error"}, {"unit-hours"}}, {}};
  if (shown.meter) table.columns.push_back({"meter off by up to W"});
  List list;
  for (const metering::IncrementEstimate& increment : shown.fit.increments) {
    const auto& each = increment.each_w;
    table.rows.push_back({increment.workload, estimate_words(increment),
                          each ? fixed(each->standard_error, 3) : "-",
                          fixed(increment.unit_hours, 1)});
    if (shown.meter) {
      table.rows.back().push_back(each ? fixed(meter_increment_w(shown, *each), 2) : "-");
    }
    if (auto words = in_step_words(increment)) list.items.push_back(std::move(*words));
  }
  section.blocks.push_back(std::move(table));
  if (!list.items.empty()) section.blocks.push_back(std::move(list));
  if (shown.fit.residuals)
    section.blocks.push_back(Paragraph{residual_words(*shown.fit.residuals)});
  return section;
}

}  // namespace wattweek::report
