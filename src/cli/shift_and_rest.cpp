#include "cli/shift_and_rest.hpp"

#include <fmt/format.h>

#include "cli/console.hpp"
#include "cli/resting.hpp"
#include "cli/study_file.hpp"
#include "cli/study_options.hpp"
#include "wattweek/report/shift_and_rest.hpp"

namespace wattweek::cli {
namespace {

using Problems = std::vector<diag::Diagnostic>;

std::variant<read::StudyInput, Outcome> study_of(const Arguments& arguments) {
  if (arguments.has("threads")) return refused("--threads: goes with --vary");
  auto loaded = studies_of(arguments);
  if (auto* outcome = std::get_if<Outcome>(&loaded)) return std::move(*outcome);
  return std::move(std::get<std::vector<read::StudyInput>>(loaded).front());
}

Misuse no_workload(const model::Study& study, const std::string& id) {
  std::vector<std::string_view> ids;
  for (const model::Workload& workload : study.workloads) {
    if (decide::movable(workload) == decide::Movable::yes) ids.push_back(workload.id);
  }
  if (ids.empty()) return {"--shift: the study has no workload with hours that could be moved"};
  return {fmt::format("--shift: no workload '{}'{}", id, suggestion(id, ids))};
}

std::variant<std::size_t, Misuse> workload_of(const model::Study& study, const std::string& id) {
  for (std::size_t w = 0; w < study.workloads.size(); ++w) {
    const model::Workload& workload = study.workloads[w];
    if (workload.id != id) continue;
    switch (decide::movable(workload)) {
      case decide::Movable::yes:
        return w;
      case decide::Movable::all_day:
        return Misuse{fmt::format(
            "--shift: '{}' has no start that could be moved, its uses are all day long; expected "
            "a workload with hours",
            id)};
      case decide::Movable::overlaps:
        return Misuse{fmt::format(
            "--shift: the hours of a use of '{}' overlap, and midnight could tear them apart; "
            "expected hours that do not, where the use names days",
            id)};
    }
  }
  return no_workload(study, id);
}

std::variant<decide::Shift, Problems> reckon_shift(const read::StudyInput& input,
                                                   std::size_t workload) {
  const auto today = assess(input);
  if (const auto* problems = std::get_if<Problems>(&today)) return *problems;
  ProgressLine line;
  return decide::shift(
      input.study, input.zone, std::get<decide::Assessment>(today), workload,
      [&line](const std::string& what, double fraction) { line.show(what, fraction); });
}

}  // namespace

Outcome run_shift(const Arguments& arguments, const std::string& format,
                  const report::Style& style) {
  const auto loaded = study_of(arguments);
  if (const auto* outcome = std::get_if<Outcome>(&loaded)) return *outcome;
  const auto& input = std::get<read::StudyInput>(loaded);
  const auto workload = workload_of(input.study, *arguments.value("shift"));
  if (const auto* misuse = std::get_if<Misuse>(&workload)) return refused(misuse->message);
  const auto shift = reckon_shift(input, std::get<std::size_t>(workload));
  if (const auto* problems = std::get_if<Problems>(&shift)) return refused(*problems);
  const report::ShiftShown shown{input.study, std::get<decide::Shift>(shift)};
  if (format == "json") return {kDone, report::shift_json(shown)};
  if (format == "csv") return {kDone, report::shift_csv(shown)};
  return {kDone, report::shift_text(shown, style)};
}

Outcome run_rest(const Arguments& arguments, const std::string& format,
                 const report::Style& style) {
  if (format == "csv") return refused("--rest: found --format csv, accepted is text or json");
  const auto loaded = study_of(arguments);
  if (const auto* outcome = std::get_if<Outcome>(&loaded)) return *outcome;
  const auto& input = std::get<read::StudyInput>(loaded);
  const auto resting = resting_of(input.study, *arguments.value("rest"));
  if (const auto* misuse = std::get_if<Misuse>(&resting)) return refused(misuse->message);
  const auto& [plan, is_state_given] = std::get<Resting>(resting);
  const auto today = assess(input);
  if (const auto* problems = std::get_if<Problems>(&today)) return refused(*problems);
  const auto result =
      decide::rest(input.study, input.zone, std::get<decide::Assessment>(today), plan);
  if (const auto* problems = std::get_if<Problems>(&result)) return refused(*problems);
  const report::RestShown shown{input.study, plan, std::get<decide::RestResult>(result),
                                is_state_given};
  return {kDone, format == "json" ? report::rest_json(shown) : report::rest_text(shown, style)};
}

}  // namespace wattweek::cli
