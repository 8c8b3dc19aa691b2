#include <fmt/format.h>

#include "cli/draws.hpp"
#include "cli/run.hpp"
#include "cli/study_file.hpp"
#include "cli/study_options.hpp"
#include "cli/tariffs.hpp"
#include "wattweek/report/report.hpp"

namespace wattweek::cli {
namespace {

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

bool is_read_by_people(const std::string& format) {
  return format == "text" || format == "markdown";
}

/// What is asked for; else, where people read a comparison of ranges, as many draws as are not
/// felt.
std::variant<std::optional<decide::DrawOptions>, Misuse> wanted_draws(const read::StudyInput& input,
                                                                      const Arguments& arguments,
                                                                      const Shape& shape) {
  auto asked = draws_of(input.study, arguments);
  const auto* options = std::get_if<std::optional<decide::DrawOptions>>(&asked);
  if (options == nullptr || *options || shape.scope != report::Scope::compare || shape.month ||
      !is_read_by_people(shape.format)) {
    return asked;
  }
  return unasked_draws(input, std::get<unsigned>(threads_of({})));
}

/// What `--payback-within` asks for.
std::optional<Misuse> add_targets(const model::Study& study, const Arguments& arguments,
                                  decide::Assessment& assessment) {
  const std::optional<std::string> text = arguments.value("payback-within");
  if (!text) return std::nullopt;
  const auto years = whole_number("payback-within", *text, 1, 30);
  if (const auto* misuse = std::get_if<Misuse>(&years)) return *misuse;
  assessment.targets = decide::payback_targets(study, assessment, std::get<int>(years));
  return std::nullopt;
}

Outcome answer(std::string_view command, const Arguments& arguments, Shape shape) {
  const auto format = format_of(*command_named(command), arguments);
  if (const auto* misuse = std::get_if<Misuse>(&format)) return refused(misuse->message);
  shape.format = std::get<std::string>(format);
  if (arguments.has("month") && !is_read_by_people(shape.format)) {
    return refused("--month: goes with text and markdown; json holds the bills of all months");
  }
  const auto loaded = studies_of(arguments);
  if (const auto* outcome = std::get_if<Outcome>(&loaded)) return *outcome;
  const read::StudyInput& input = std::get<std::vector<read::StudyInput>>(loaded).front();
  const auto month = month_of(input.study, arguments);
  if (const auto* misuse = std::get_if<Misuse>(&month)) return refused(misuse->message);
  shape.month = std::get<std::optional<std::size_t>>(month);
  const auto draws = wanted_draws(input, arguments, shape);
  if (const auto* misuse = std::get_if<Misuse>(&draws)) return refused(misuse->message);
  auto assessed = assess(input);
  if (const auto* problems = std::get_if<std::vector<diag::Diagnostic>>(&assessed)) {
    return refused(*problems);
  }
  auto& assessment = std::get<decide::Assessment>(assessed);
  if (const auto misuse = add_targets(input.study, arguments, assessment)) {
    return refused(misuse->message);
  }
  if (const auto& options = std::get<std::optional<decide::DrawOptions>>(draws)) {
    auto drawn = draw(input, *options);
    if (const auto* problems = std::get_if<std::vector<diag::Diagnostic>>(&drawn)) {
      return refused(*problems);
    }
    assessment.uncertainty = std::get<decide::Uncertainty>(std::move(drawn));
  }
  return {kDone, shown(input, assessment, shape)};
}

}  // namespace

Outcome run_estimate(const Arguments& arguments, const report::Style& style) {
  return answer("estimate", arguments, {report::Scope::estimate, "", std::nullopt, style});
}

Outcome run_compare(const Arguments& arguments, const report::Style& style) {
  if (arguments.list("tariff").size() > 1) return compare_under_tariffs(arguments, style);
  return answer("compare", arguments, {report::Scope::compare, "", std::nullopt, style});
}

}  // namespace wattweek::cli
