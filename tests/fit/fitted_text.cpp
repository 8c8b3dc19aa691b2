#include "fitted_text.hpp"

#include <memory>

#include "../logs/logged.hpp"
#include "wattweek/logs/activity_rows.hpp"

namespace wattweek::tests {
namespace {

using Problems = std::vector<diag::Diagnostic>;

std::string lines_of(const Problems& problems) {
  std::string lines;
  for (const diag::Diagnostic& problem : problems) lines += diag::to_text(problem) + "\n";
  return lines;
}

}  // namespace

logs::LogFile text_file(const std::string& name, const std::string& text) {
  return {name, text.size(), [text] { return std::make_unique<logs::TextSource>(text); }};
}

FittedText fitted_text(const std::string& log, const std::string& activity,
                       const logs::LogOptions& options, std::optional<double> gap_s) {
  FittedText all;
  if (!activity.empty()) {
    const auto rows = logs::read_activity(text_file("activity.csv", activity),
                                          {options.zone, options.date_order});
    if (const auto* problems = std::get_if<Problems>(&rows)) {
      all.problems = lines_of(*problems);
      return all;
    }
    all.activity = metering::activity_of(std::get<std::vector<logs::ActivityRow>>(rows));
  }
  const calendar::ZoneRules zone = options.zone.value_or(calendar::ZoneRules{});
  metering::Measuring measuring({zone, gap_s, all.activity});
  auto report = logs::read_log(text_file("log.csv", log), options, measuring);
  if (const auto* problems = std::get_if<Problems>(&report)) {
    all.problems = lines_of(*problems);
    return all;
  }
  all.report = std::get<logs::LogReport>(std::move(report));
  all.measurement = measuring.finish();
  all.fit = metering::fit(all.measurement.measured, all.activity.workloads, {});
  return all;
}

}  // namespace wattweek::tests
