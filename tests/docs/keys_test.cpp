// docs/files.md against the list of keys that the readers know: a key without a row and an
// example, or a row without a key, fails.

#include <doctest/doctest.h>

#include <cctype>

#include "key_sections.hpp"
#include "toml_examples.hpp"

namespace wattweek::docs {
namespace {

using read::KeyTable;

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
  for (const KindOfFile& file : kinds_of_file()) {
    for (const KeyTable& table : read::key_tables(file.kind)) {
      if (is_inline(file.kind, table)) continue;
      CAPTURE(file.chapter);
      CAPTURE(heading_of(table));
      const auto rows = first_cells(section_of(file, table));
      for (const std::string_view key : table.keys) {
        CHECK_MESSAGE(rows.count(std::string(key)) == 1, "no row for " << key);
      }
    }
  }
}

TEST_CASE("docs/files.md: no row describes a key that the readers do not know") {
  for (const KindOfFile& file : kinds_of_file()) {
    for (const KeyTable& table : read::key_tables(file.kind)) {
      if (is_inline(file.kind, table) || table.any_key) continue;
      CAPTURE(file.chapter);
      CAPTURE(heading_of(table));
      const std::set<std::string> known(table.keys.begin(), table.keys.end());
      for (const auto& row : first_cells(section_of(file, table))) {
        CHECK_MESSAGE(known.count(row) == 1, "unknown: " << row);
      }
    }
  }
}

TEST_CASE("docs/files.md: each key stands in an example") {
  std::string all;
  for (const Example& example : toml_examples(kKeysDocument)) {
    if (!example.is_wrong()) all += example.block.text;
  }
  for (const KindOfFile& file : kinds_of_file()) {
    for (const KeyTable& table : read::key_tables(file.kind)) {
      for (const std::string_view key : table.keys) {
        CHECK_MESSAGE(uses_key(all, key), "no example of " << key << " in " << table.path);
      }
    }
  }
}

}  // namespace
}  // namespace wattweek::docs
