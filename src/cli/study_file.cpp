#include "cli/study_file.hpp"

#include <fmt/format.h>

#include "cli/console.hpp"
#include "cli/files.hpp"

namespace wattweek::cli {
namespace {

/// The mistake of a text that is plainly of another kind than expected.
std::optional<diag::Diagnostic> wrong_kind(const read::SourceText& source, read::FileKind expected,
                                           std::string_view description) {
  const read::Read<read::FileKind> kind = read::kind_of(source);
  if (!kind.value || *kind.value == expected) return std::nullopt;
  diag::Diagnostic problem;
  problem.place.file = std::make_shared<const std::string>(source.name);
  problem.message = fmt::format("found {}; expected {}", with_article(*kind.value), description);
  return problem;
}

std::optional<diag::Diagnostic> no_study(const read::SourceText& source) {
  return wrong_kind(source, read::FileKind::study,
                    "a study (it has a time_zone, a start, a tariff and candidates)");
}

/// Files that the command line names: those that could be read, and what is wrong with the others.
struct Found {
  std::vector<read::SourceText> sources;
  std::string unreadable;  ///< A line for each.
  std::vector<diag::Diagnostic> of_wrong_kind;
};

Found find_tariffs(const std::vector<std::string>& paths, Sources* sources) {
  Found found;
  const read::Surroundings all = surroundings_noted_in(sources);
  for (const std::string& path : paths) {
    auto loaded = all.load(path, "", read::ShippedKind::tariff);
    if (const auto* why = std::get_if<read::Unreadable>(&loaded)) {
      found.unreadable += error_line("--tariff: " + why->reason);
      continue;
    }
    auto& source = std::get<read::SourceText>(loaded);
    if (auto problem = wrong_kind(source, read::FileKind::tariff,
                                  "a tariff (it has a currency, and bands or blocks)")) {
      found.of_wrong_kind.push_back(std::move(*problem));
    } else {
      found.sources.push_back(std::move(source));
    }
  }
  return found;
}

}  // namespace

std::string_view with_article(read::FileKind kind) {
  switch (kind) {
    case read::FileKind::study:
      return "a study";
    case read::FileKind::profile:
      return "a profile";
    case read::FileKind::tariff:
      return "a tariff";
  }
  return "";
}

std::variant<read::SourceText, Outcome> text_of(const std::string& path) {
  auto loaded = read_file(path);
  if (const auto* why = std::get_if<read::Unreadable>(&loaded)) return refused(why->reason);
  return std::get<read::SourceText>(std::move(loaded));
}

std::variant<read::StudyInput, Outcome> read_study(const std::string& path, Sources* sources) {
  const auto text = text_of(path);
  if (const auto* outcome = std::get_if<Outcome>(&text)) return *outcome;
  const auto& source = std::get<read::SourceText>(text);
  if (auto problem = no_study(source)) return refused({*std::move(problem)});
  if (sources != nullptr) add_once(*sources, source);
  read::Read<read::StudyInput> study = read::study(source, surroundings_noted_in(sources));
  if (!study.value) return refused(std::move(study.problems));
  return *std::move(study.value);
}

std::variant<std::vector<read::StudyInput>, Outcome> read_study_under(
    const std::string& path, const std::vector<std::string>& tariffs, Sources* sources) {
  const auto text = text_of(path);
  if (const auto* outcome = std::get_if<Outcome>(&text)) return *outcome;
  const auto& source = std::get<read::SourceText>(text);
  if (auto problem = no_study(source)) return refused({*std::move(problem)});
  if (sources != nullptr) add_once(*sources, source);
  Found found = find_tariffs(tariffs, sources);
  auto inputs = read::study_under(source, found.sources, surroundings_noted_in(sources));
  std::vector<diag::Diagnostic> problems = std::move(inputs.problems);
  problems.insert(problems.end(), found.of_wrong_kind.begin(), found.of_wrong_kind.end());
  if (problems.empty() && found.unreadable.empty()) return *std::move(inputs.value);
  Outcome outcome = refused(std::move(problems));
  outcome.err.insert(0, found.unreadable);
  return outcome;
}

std::variant<model::Tariff, Outcome> read_tariff(const std::string& path) {
  Found found = find_tariffs({path}, nullptr);
  if (!found.unreadable.empty()) return Outcome{kWrongInput, "", found.unreadable};
  if (!found.of_wrong_kind.empty()) return refused(std::move(found.of_wrong_kind));
  read::Read<model::Tariff> tariff = read::tariff(found.sources.front());
  if (!tariff.value) return refused(std::move(tariff.problems));
  return *std::move(tariff.value);
}

decide::Progress shown_on(ProgressLine& line) {
  return [&line](const std::string& what, double fraction) { line.show(what, fraction); };
}

std::variant<decide::Assessment, std::vector<diag::Diagnostic>> assess(
    const read::StudyInput& input) {
  ProgressLine line;
  return decide::assess(input.study, input.zone, shown_on(line));
}

std::variant<decide::Uncertainty, std::vector<diag::Diagnostic>> draw(
    const read::StudyInput& input, const decide::DrawOptions& options) {
  ProgressLine line;
  return decide::draw(input.study, input.zone, options, shown_on(line));
}

std::vector<decide::Week> weeks(const read::StudyInput& input) {
  ProgressLine line;
  return decide::weeks(input.study, input.zone, shown_on(line));
}

}  // namespace wattweek::cli
