// Every TOML example in the documents is a file that the readers take as it stands.

#include "toml_examples.hpp"

#include <doctest/doctest.h>

#include "wattweek/decide/assessment.hpp"

namespace wattweek::docs {
namespace {

std::string listed(const std::vector<diag::Diagnostic>& problems) {
  std::string text;
  for (const diag::Diagnostic& problem : problems) text += diag::to_text(problem) + "\n";
  return text;
}

// A study is reckoned too; what an adviser would note about a whole example is a mistake in it.
std::string problems_of_study(const read::SourceText& source, const Example& example) {
  const auto got = read::study(source, surroundings_of(example.block.document));
  if (!got.value) return listed(got.problems);
  const auto assessed = decide::assess(got.value->study, got.value->zone);
  if (const auto* problems = std::get_if<std::vector<diag::Diagnostic>>(&assessed)) {
    return listed(*problems);
  }
  std::string notes;
  if (!example.is_whole()) return notes;
  for (const decide::Note& note : std::get<decide::Assessment>(assessed).notes) {
    notes += decide::where_text(note) + ": " + note.text + "\n";
  }
  return notes;
}

std::string problems_of(const Example& example) {
  const std::string name = where(example.block);
  const read::SourceText source{name, name, whole_text(example)};
  switch (*example.kind) {
    case read::FileKind::study:
      return problems_of_study(source, example);
    case read::FileKind::profile:
      return listed(read::profile(source).problems);
    case read::FileKind::tariff:
      return listed(read::tariff(source).problems);
  }
  return "";
}

TEST_CASE("documents: every TOML block says which kind of file it is, and is whole or marked") {
  for (const std::string& document : all_documents()) {
    for (const Example& example : toml_examples(document)) {
      CAPTURE(where(example.block));
      CHECK(example.kind.has_value());
      const bool is_marked = example.is_whole() || example.is_fragment() || example.is_wrong();
      CHECK_MESSAGE(is_marked, example.block.info);
    }
  }
}

TEST_CASE("documents: every TOML example is read without a problem, and whole ones need no note") {
  int checked = 0;
  for (const std::string& document : all_documents()) {
    for (const Example& example : toml_examples(document)) {
      if (!example.kind || example.is_wrong()) continue;
      CAPTURE(where(example.block));
      CAPTURE(whole_text(example));
      CHECK(problems_of(example) == "");
      ++checked;
    }
  }
  CHECK(checked > 10);
}

TEST_CASE("documents: an example that is to show mistakes has some") {
  for (const std::string& document : all_documents()) {
    for (const Example& example : toml_examples(document)) {
      if (!example.kind || !example.is_wrong()) continue;
      CAPTURE(where(example.block));
      CHECK(problems_of(example) != "");
    }
  }
}

}  // namespace
}  // namespace wattweek::docs
