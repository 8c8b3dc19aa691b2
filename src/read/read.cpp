#include "wattweek/read/read.hpp"

#include <algorithm>
#include <utility>

#include "coverage.hpp"
#include "document.hpp"
#include "profile_reader.hpp"
#include "study_reader.hpp"
#include "tariff_reader.hpp"

namespace wattweek::read {

namespace {

template <class T>
Read<T> finished(T value, std::vector<diag::Diagnostic> problems) {
  if (problems.empty()) return {std::move(value), {}};
  diag::sort_by_place(problems);
  return {std::nullopt, std::move(problems)};
}

template <class T>
Read<T> failed(const File& file) {
  return {std::nullopt, file.problems()};
}

// Those of the study first.
std::vector<diag::Diagnostic> all_problems(const File& study, const LinkedFiles& linked) {
  std::vector<diag::Diagnostic> problems = study.problems();
  problems.insert(problems.end(), linked.problems().begin(), linked.problems().end());
  return problems;
}

std::size_t keys_of_kind(const toml::table& root, FileKind kind) {
  const std::vector<std::string_view> keys = telling_keys(kind);
  const auto is_there = [&root](std::string_view key) { return root.contains(key); };
  return static_cast<std::size_t>(std::count_if(keys.begin(), keys.end(), is_there));
}

}  // namespace

Read<StudyInput> study(const SourceText& source, const Surroundings& surroundings) {
  File file(source, FileKind::study);
  const auto root = parse(file);
  if (!root) return failed<StudyInput>(file);
  LinkedFiles linked(surroundings);
  const Table table(file, *root, "");
  StudyInput input = StudyReader(table, surroundings, linked).read();
  return finished(std::move(input), all_problems(file, linked));
}

Read<std::vector<StudyInput>> study_under(const SourceText& source,
                                          const std::vector<SourceText>& tariffs,
                                          const Surroundings& surroundings) {
  File file(source, FileKind::study);
  const auto root = parse(file);
  LinkedFiles linked(surroundings);
  std::vector<StudyInput> inputs;
  if (root) {
    const Table table(file, *root, "");
    inputs = StudyReader(table, surroundings, linked).read_under(tariffs);
  } else {
    for (const SourceText& tariff : tariffs) linked.tariff(tariff, {});
  }
  return finished(std::move(inputs), all_problems(file, linked));
}

Read<model::Profile> profile(const SourceText& source) {
  File file(source, FileKind::profile);
  const auto root = parse(file);
  if (!root) return failed<model::Profile>(file);
  model::Profile profile = read_profile_file(file, *root);
  return finished(std::move(profile), file.problems());
}

Read<model::Tariff> tariff(const SourceText& source) {
  File file(source, FileKind::tariff);
  const auto root = parse(file);
  if (!root) return failed<model::Tariff>(file);
  TariffDraft draft = read_tariff_file(file, *root, {});
  std::vector<diag::Diagnostic> problems = file.problems();
  if (problems.empty()) {
    if (auto gap = gap_anytime(draft)) problems.push_back(std::move(*gap));
  }
  return finished(std::move(draft.tariff), std::move(problems));
}

Read<FileKind> kind_of(const SourceText& source) {
  File file(source, FileKind::study);
  const auto root = parse(file);
  if (!root) return failed<FileKind>(file);
  FileKind likeliest = FileKind::study;
  std::size_t most = 0;
  for (const FileKind kind : {FileKind::study, FileKind::profile, FileKind::tariff}) {
    const std::size_t keys = keys_of_kind(*root, kind);
    if (keys > most) {
      most = keys;
      likeliest = kind;
    }
  }
  if (most > 0) return {likeliest, {}};
  const std::string found = root->empty() ? "the file is empty" : "no study, profile or tariff";
  file.report(file.start(),
              found + ": expected a study with one of " +
                  listed(telling_keys(FileKind::study), false) + ", a profile with one of " +
                  listed(telling_keys(FileKind::profile), false) + ", or a tariff with one of " +
                  listed(telling_keys(FileKind::tariff), false));
  return failed<FileKind>(file);
}

}  // namespace wattweek::read
