#include "cli/study_file.hpp"

#include <fmt/format.h>

#include "cli/console.hpp"
#include "cli/files.hpp"

namespace wattweek::cli {
namespace {

diag::Diagnostic wrong_kind(const read::SourceText& source, read::FileKind kind) {
  return {{std::make_shared<const std::string>(source.name), 1, 1},
          fmt::format("found {}; expected a study (it has a time_zone, a start, a tariff and "
                      "candidates)",
                      with_article(kind))};
}

decide::Progress shown_on(ProgressLine& line) {
  return [&line](const std::string& what, double fraction) { line.show(what, fraction); };
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

std::variant<read::StudyInput, Outcome> read_study(const std::string& path) {
  const auto text = text_of(path);
  if (const auto* outcome = std::get_if<Outcome>(&text)) return *outcome;
  const auto& source = std::get<read::SourceText>(text);
  const read::Read<read::FileKind> kind = read::kind_of(source);
  if (kind.value && *kind.value != read::FileKind::study) {
    return refused({wrong_kind(source, *kind.value)});
  }
  read::Read<read::StudyInput> study = read::study(source, surroundings());
  if (!study.value) return refused(std::move(study.problems));
  return *std::move(study.value);
}

std::variant<decide::Assessment, std::vector<diag::Diagnostic>> assess(
    const read::StudyInput& input) {
  ProgressLine line;
  return decide::assess(input.study, input.zone, shown_on(line));
}

std::vector<decide::Week> weeks(const read::StudyInput& input) {
  ProgressLine line;
  return decide::weeks(input.study, input.zone, shown_on(line));
}

}  // namespace wattweek::cli
