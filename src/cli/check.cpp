#include <fmt/format.h>

#include <utility>

#include "cli/files.hpp"
#include "cli/run.hpp"
#include "cli/study_file.hpp"
#include "wattweek/calendar/tariff_walk.hpp"
#include "wattweek/diag/printable.hpp"
#include "wattweek/report/cautions.hpp"
#include "wattweek/report/file_alone.hpp"
#include "wattweek/report/words.hpp"

namespace wattweek::cli {
namespace {

/// What has been found in all files so far.
struct Findings {
  report::Style style;
  std::vector<std::string> good;  ///< What is said of each file without a mistake.
  bool any_profile = false;
  bool highest_watts = false;  ///< Are they spoken of?
  std::string unreadable;      ///< A line for each file that cannot be read.
  std::vector<diag::Diagnostic> problems;
  std::vector<diag::Diagnostic> notes;
};

void append(std::vector<diag::Diagnostic>& all, const std::vector<diag::Diagnostic>& more) {
  all.insert(all.end(), more.begin(), more.end());
}

void good(Findings& all, const std::string& file, const std::string& what,
          const std::string& more = "") {
  const std::string line = diag::printable(fmt::format("{}: ok ({})", file, what)) + '\n';
  all.good.push_back(more.empty() ? line : line + '\n' + more);
}

/// Lines by themselves stand together; what is longer stands apart from its neighbours.
std::string blocks(const std::vector<std::string>& all) {
  const auto is_line = [](const std::string& block) {
    return block.find('\n') + 1 == block.size();
  };
  std::string text;
  for (std::size_t i = 0; i < all.size(); ++i) {
    if (i > 0 && !(is_line(all[i - 1]) && is_line(all[i]))) text += '\n';
    text += all[i];
  }
  return text;
}

/// All that is said where no file is wrong: a block for each, and the cautions once at the end.
std::string whole(const Findings& all) {
  std::string text = blocks(all.good);
  std::vector<std::string_view> cautions;
  if (all.highest_watts) cautions.push_back(report::highest_watts_caution());
  if (all.any_profile) cautions.push_back(report::measuring_caution());
  if (!cautions.empty()) text += '\n' + report::cautions_text(cautions, all.style);
  return text;
}

/// A note is about a place in a file, or about a candidate, which has one.
diag::Place place_of(const decide::Note& note, const std::vector<model::Candidate>& candidates) {
  if (const auto* place = std::get_if<diag::Place>(&note.where)) return *place;
  for (const model::Candidate& candidate : candidates) {
    if (candidate.id == std::get<std::string>(note.where)) return candidate.place;
  }
  return {};
}

void take_notes(Findings& all, const std::vector<decide::Note>& notes,
                const std::vector<model::Candidate>& candidates = {}) {
  for (const decide::Note& note : notes) {
    all.notes.push_back({place_of(note, candidates), fmt::format("{} [{}]", note.text, note.code)});
  }
}

void check_study(Findings& all, const read::SourceText& source) {
  const read::Read<read::StudyInput> input = read::study(source, surroundings());
  append(all.problems, input.problems);
  if (!input.value) return;
  const model::Study& study = input.value->study;
  const auto assessed = assess(*input.value);
  if (const auto* problems = std::get_if<std::vector<diag::Diagnostic>>(&assessed)) {
    return append(all.problems, *problems);
  }
  take_notes(all, std::get<decide::Assessment>(assessed).notes, study.candidates);
  good(all, source.name,
       fmt::format("study: {}, {}, {}", report::counted(study.candidates.size(), "candidate"),
                   report::counted(study.workloads.size(), "workload"),
                   report::counted(static_cast<std::size_t>(study.months), "month")));
}

void check_profile(Findings& all, const read::SourceText& source) {
  const read::Read<model::Profile> profile = read::profile(source);
  append(all.problems, profile.problems);
  if (!profile.value) return;
  take_notes(all, decide::notes_of_profile(*profile.value));
  good(all, source.name,
       fmt::format("profile: {}, {}", profile.value->name,
                   profile.value->week
                       ? "watts by hour of the week"
                       : report::counted(profile.value->increments.size(), "increment")),
       report::profile_text(*profile.value, all.style));
  all.any_profile = true;
  all.highest_watts = all.highest_watts || report::speaks_of_highest_watts(*profile.value);
}

void check_tariff(Findings& all, const read::SourceText& source) {
  const read::Read<model::Tariff> tariff = read::tariff(source);
  append(all.problems, tariff.problems);
  if (!tariff.value) return;
  take_notes(all, decide::notes_of_tariff(*tariff.value));
  good(all, source.name,
       fmt::format("tariff: {}, {}, {}", tariff.value->name,
                   report::counted(tariff.value->bands.size(), "price band"),
                   tariff.value->currency),
       report::tariff_text(*tariff.value, calendar::walk(*tariff.value), all.style));
}

void check_file(Findings& all, const std::string& path) {
  const auto loaded = read_file(path);
  if (const auto* why = std::get_if<read::Unreadable>(&loaded)) {
    all.unreadable += error_line(why->reason);
    return;
  }
  const auto& source = std::get<read::SourceText>(loaded);
  const read::Read<read::FileKind> kind = read::kind_of(source);
  if (!kind.value) return append(all.problems, kind.problems);
  switch (*kind.value) {
    case read::FileKind::study:
      return check_study(all, source);
    case read::FileKind::profile:
      return check_profile(all, source);
    case read::FileKind::tariff:
      return check_tariff(all, source);
  }
}

std::string note_lines(std::vector<diag::Diagnostic> notes) {
  diag::sort_by_place(notes);
  std::string lines;
  for (const diag::Diagnostic& note : notes) {
    lines += diag::printable(fmt::format("{}: note: {}", to_text(note.place), note.message)) + '\n';
  }
  return lines;
}

}  // namespace

Outcome run_check(const Arguments& arguments, const report::Style& style) {
  Findings all;
  all.style = style;
  for (const std::string& path : arguments.operands) check_file(all, path);
  if (arguments.has("strict")) append(all.problems, std::exchange(all.notes, {}));
  const std::string notes = note_lines(all.notes);
  if (all.problems.empty() && all.unreadable.empty()) return {kDone, whole(all), notes};
  Outcome outcome = refused(all.problems);
  outcome.err.insert(0, all.unreadable);
  outcome.err += notes;
  return outcome;
}

}  // namespace wattweek::cli
