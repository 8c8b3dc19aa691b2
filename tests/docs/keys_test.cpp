// docs/files.md against the list of keys that the readers know: a key without a row and an
// example, or a row without a key, fails.

#include "wattweek/read/keys.hpp"

#include <doctest/doctest.h>

#include <cctype>

#include "toml_examples.hpp"

namespace wattweek::docs {
namespace {

using read::FileKind;
using read::KeyTable;

const std::string kDocument = "docs/files.md";

struct Chapter {
  FileKind kind;
  std::string heading;
};
const std::vector<Chapter> kChapters{{FileKind::study, "The study file"},
                                     {FileKind::profile, "The profile file"},
                                     {FileKind::tariff, "The tariff file"}};

// `[household]`, `[[candidate]]`, an entry of `[increments]`.
std::string heading_of(const KeyTable& table) {
  if (table.path.empty()) return "At the top";
  const std::size_t star = table.path.find(".*");
  if (star != std::string::npos) return "An entry of `[" + table.path.substr(0, star) + "]`";
  return table.form == read::TableForm::repeated ? "`[[" + table.path + "]]`"
                                                 : "`[" + table.path + "]`";
}

// Tables of a profile or tariff that stands inside a study are described where they are files.
bool is_inline(FileKind kind, const KeyTable& table) {
  if (kind != FileKind::study) return false;
  if (table.path.substr(0, 6) == "tariff") return true;
  for (const KeyTable& of_profile : read::key_tables(FileKind::profile)) {
    if (!of_profile.path.empty() && table.path == "candidate.device." + of_profile.path) {
      return true;
    }
  }
  return false;
}

bool is_word_letter(char c) { return std::isalnum(static_cast<unsigned char>(c)) != 0 || c == '_'; }

// Is the key set, or does a header name it?
bool uses_key(const std::string& text, std::string_view key) {
  for (std::size_t at = text.find(key); at != std::string::npos; at = text.find(key, at + 1)) {
    if (at > 0 && (is_word_letter(text[at - 1]) || text[at - 1] == '"')) continue;
    std::size_t end = at + key.size();
    while (end < text.size() && text[end] == ' ') ++end;
    if (end < text.size() && (text[end] == '=' || text[end] == ']' || text[end] == '.'))
      return true;
  }
  return false;
}

TEST_CASE("docs/files.md: each table of the files has a section, and each key a row in it") {
  for (const Chapter& chapter : kChapters) {
    for (const KeyTable& table : read::key_tables(chapter.kind)) {
      if (is_inline(chapter.kind, table)) continue;
      CAPTURE(chapter.heading);
      CAPTURE(heading_of(table));
      const auto rows = first_cells(section(kDocument, chapter.heading, heading_of(table)));
      for (const std::string_view key : table.keys) {
        CHECK_MESSAGE(rows.count(std::string(key)) == 1, "no row for " << key);
      }
    }
  }
}

TEST_CASE("docs/files.md: no row describes a key that the readers do not know") {
  for (const Chapter& chapter : kChapters) {
    for (const KeyTable& table : read::key_tables(chapter.kind)) {
      if (is_inline(chapter.kind, table) || table.any_key) continue;
      CAPTURE(chapter.heading);
      CAPTURE(heading_of(table));
      const std::set<std::string> known(table.keys.begin(), table.keys.end());
      for (const auto& row : first_cells(section(kDocument, chapter.heading, heading_of(table)))) {
        CHECK_MESSAGE(known.count(row) == 1, "unknown: " << row);
      }
    }
  }
}

TEST_CASE("docs/files.md: each key stands in an example") {
  std::string all;
  for (const Example& example : toml_examples(kDocument)) {
    if (!example.is_wrong()) all += example.block.text;
  }
  for (const Chapter& chapter : kChapters) {
    for (const KeyTable& table : read::key_tables(chapter.kind)) {
      for (const std::string_view key : table.keys) {
        CHECK_MESSAGE(uses_key(all, key), "no example of " << key << " in " << table.path);
      }
    }
  }
}

}  // namespace
}  // namespace wattweek::docs
