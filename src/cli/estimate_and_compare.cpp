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

/// Which of the study's months `--month` names; nothing where it is not given.
std::variant<std::optional<std::size_t>, Misuse> month_of(const model::Study& study,
                                                          const Arguments& arguments) {
  const std::optional<std::string> text = arguments.value("month");
  if (!text) return std::nullopt;
  std::string first;
  std::string last;
  for (int m = 0; m < study.months; ++m) {
    last = calendar::to_text(study.start + std::chrono::months(m));
    if (m == 0) first = last;
    if (last == *text) return std::optional<std::size_t>(m);
  }
  return Misuse{fmt::format("--month: found '{}', accepted is a month of the study, {} to {}",
                            *text, first, last)};
}

/// What is to be shown, and how.
struct Shape {
  report::Scope scope;
  std::string format;
  std::optional<std::size_t> month;
  report::Style style;
};

std::string shown(const read::StudyInput& input, const decide::Assessment& assessment,
                  const Shape& shape) {
  const model::Study& study = input.study;
  const bool markdown = shape.format == "markdown";
  if (shape.format == "json") return report::json(study, assessment, shape.scope);
  if (shape.format == "csv") return report::csv(study, assessment, shape.scope);
  if (shape.month) {
    return markdown ? report::month_bills_markdown(study, assessment, *shape.month)
                    : report::month_bills_text(study, assessment, *shape.month, shape.style);
  }
  const std::vector<decide::Week> week_of_each = weeks(input);
  return markdown ? report::markdown(study, assessment, week_of_each, shape.scope)
                  : report::text(study, assessment, week_of_each, shape.scope, shape.style);
}

/// The study with what the options change in it.
std::variant<read::StudyInput, Outcome> study_of(const Arguments& arguments) {
  auto loaded = read_study(arguments.operands.front());
  if (std::holds_alternative<Outcome>(loaded)) return loaded;
  model::Study& study = std::get<read::StudyInput>(loaded).study;
  if (const auto misuse = set_years(study, arguments)) return refused(misuse->message);
  if (const auto misuse = set_baseline(study, arguments)) return refused(misuse->message);
  return loaded;
}

Outcome answer(std::string_view command, const Arguments& arguments, Shape shape) {
  const auto format = format_of(*command_named(command), arguments);
  if (const auto* misuse = std::get_if<Misuse>(&format)) return refused(misuse->message);
  shape.format = std::get<std::string>(format);
  if (arguments.has("month") && shape.format != "text" && shape.format != "markdown") {
    return refused("--month: goes with text and markdown; json holds the bills of all months");
  }
  const auto loaded = study_of(arguments);
  if (const auto* outcome = std::get_if<Outcome>(&loaded)) return *outcome;
  const auto& input = std::get<read::StudyInput>(loaded);
  const auto month = month_of(input.study, arguments);
  if (const auto* misuse = std::get_if<Misuse>(&month)) return refused(misuse->message);
  shape.month = std::get<std::optional<std::size_t>>(month);
  const auto assessed = assess(input);
  if (const auto* problems = std::get_if<std::vector<diag::Diagnostic>>(&assessed)) {
    return refused(*problems);
  }
  return {kDone, shown(input, std::get<decide::Assessment>(assessed), shape)};
}

}  // namespace

Outcome run_estimate(const Arguments& arguments, const report::Style& style) {
  return answer("estimate", arguments, {report::Scope::estimate, "", std::nullopt, style});
}

Outcome run_compare(const Arguments& arguments, const report::Style& style) {
  return answer("compare", arguments, {report::Scope::compare, "", std::nullopt, style});
}

}  // namespace wattweek::cli
