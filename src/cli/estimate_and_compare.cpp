#include <fmt/format.h>

#include "cli/run.hpp"
#include "cli/study_file.hpp"
#include "wattweek/report/report.hpp"

namespace wattweek::cli {
namespace {

std::optional<Misuse> set_years(model::Study& study, const Arguments& arguments) {
  const std::optional<std::string> text = arguments.value("years");
  if (!text) return std::nullopt;
  const auto years = whole_number("years", *text, 1, 30);
  if (const auto* misuse = std::get_if<Misuse>(&years)) return *misuse;
  if (study.months != 12) {
    return Misuse{fmt::format("--years: needs a study of 12 months, found months = {} in {}",
                              study.months, *study.months_place.file)};
  }
  if (!study.finance) study.finance.emplace();
  study.finance->years = std::get<int>(years);
  return std::nullopt;
}

std::optional<Misuse> set_baseline(model::Study& study, const Arguments& arguments) {
  const std::optional<std::string> id = arguments.value("baseline");
  if (!id) return std::nullopt;
  std::vector<std::string_view> known;
  for (std::size_t c = 0; c < study.candidates.size(); ++c) {
    known.push_back(study.candidates[c].id);
    if (study.candidates[c].id != *id) continue;
    study.baseline = c;
    return std::nullopt;
  }
  return Misuse{fmt::format("--baseline: no candidate '{}'{}", *id, suggestion(*id, known))};
}

struct Shape {
  report::Scope scope;
  std::string format;
  int columns;
};

std::string shown(const model::Study& study, const decide::Assessment& assessment,
                  const Shape& shape) {
  if (shape.format == "json") return report::json(study, assessment, shape.scope);
  if (shape.format == "csv") return report::csv(study, assessment, shape.scope);
  if (shape.format == "markdown") return report::markdown(study, assessment, shape.scope);
  return report::text(study, assessment, shape.scope, shape.columns);
}

Outcome answer(std::string_view command, const Arguments& arguments, report::Scope scope,
               int columns) {
  const auto format = format_of(*command_named(command), arguments);
  if (const auto* misuse = std::get_if<Misuse>(&format)) return refused(misuse->message);
  auto loaded = read_study(arguments.operands.front());
  if (const auto* outcome = std::get_if<Outcome>(&loaded)) return *outcome;
  auto& input = std::get<read::StudyInput>(loaded);
  if (const auto misuse = set_years(input.study, arguments)) return refused(misuse->message);
  if (const auto misuse = set_baseline(input.study, arguments)) return refused(misuse->message);
  auto assessed = assess(input);
  if (auto* problems = std::get_if<std::vector<diag::Diagnostic>>(&assessed)) {
    return refused(std::move(*problems));
  }
  return {kDone, shown(input.study, std::get<decide::Assessment>(assessed),
                       {scope, std::get<std::string>(format), columns})};
}

}  // namespace

Outcome run_estimate(const Arguments& arguments, int columns) {
  return answer("estimate", arguments, report::Scope::estimate, columns);
}

Outcome run_compare(const Arguments& arguments, int columns) {
  return answer("compare", arguments, report::Scope::compare, columns);
}

}  // namespace wattweek::cli
