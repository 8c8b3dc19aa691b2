#include "cli/tariffs.hpp"

#include <fmt/format.h>

#include "cli/draws.hpp"
#include "cli/study_file.hpp"
#include "cli/study_options.hpp"

namespace wattweek::cli {
namespace {

using Inputs = std::vector<read::StudyInput>;
using AllUnder = std::vector<decide::UnderTariff>;

/// Some options ask for what there is under one contract only.
std::optional<Misuse> for_one_alone(const Arguments& arguments) {
  for (const std::string_view option : {"month", "draws", "seed", "threads"}) {
    if (!arguments.has(option)) continue;
    return Misuse{fmt::format("--{}: goes with one --tariff at most, found {}", option,
                              arguments.list("tariff").size())};
  }
  return std::nullopt;
}

std::optional<Misuse> without_yardstick(const Inputs& inputs) {
  std::vector<const model::Study*> studies;
  for (const read::StudyInput& input : inputs) studies.push_back(&input.study);
  if (decide::yardstick_of(studies).criterion != decide::Criterion::none) return std::nullopt;
  return without_criterion("several --tariff", *studies.front());
}

std::variant<AllUnder, Outcome> assess_all(Inputs inputs, const std::vector<std::string>& paths) {
  AllUnder all;
  std::vector<diag::Diagnostic> problems;
  for (std::size_t t = 0; t < inputs.size(); ++t) {
    auto assessed = assess(inputs[t]);
    if (const auto* found = std::get_if<std::vector<diag::Diagnostic>>(&assessed)) {
      problems.insert(problems.end(), found->begin(), found->end());
      continue;
    }
    all.push_back({paths[t], std::move(inputs[t].study), std::get<decide::Assessment>(assessed)});
  }
  if (!problems.empty()) return refused(std::move(problems));
  return all;
}

std::string shown(const AllUnder& all, const std::string& format, const report::Style& style) {
  const decide::SeveralTariffs several = decide::under_each(all);
  if (format == "json") return report::tariffs_json(all, several);
  if (format == "csv") return report::tariffs_csv(all, several);
  if (format == "markdown") return report::tariffs_markdown(all, several);
  return report::tariffs_text(all, several, style);
}

}  // namespace

Outcome compare_under_tariffs(const Arguments& arguments, const report::Style& style) {
  const auto format = format_of(*command_named("compare"), arguments);
  if (const auto* misuse = std::get_if<Misuse>(&format)) return refused(misuse->message);
  if (const auto misuse = for_one_alone(arguments)) return refused(misuse->message);
  auto loaded = studies_of(arguments);
  if (const auto* outcome = std::get_if<Outcome>(&loaded)) return *outcome;
  auto& inputs = std::get<Inputs>(loaded);
  if (const auto misuse = without_yardstick(inputs)) return refused(misuse->message);
  const auto all = assess_all(std::move(inputs), arguments.list("tariff"));
  if (const auto* outcome = std::get_if<Outcome>(&all)) return *outcome;
  return {kDone, shown(std::get<AllUnder>(all), std::get<std::string>(format), style)};
}

}  // namespace wattweek::cli
