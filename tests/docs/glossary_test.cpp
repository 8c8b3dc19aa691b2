// docs/glossary.md against the readers' keys, the JSON and the other documents: every key has its
// word, every word is used, and words that are not used are not.

#include <doctest/doctest.h>

#include <cctype>
#include <map>

#include "markdown.hpp"
#include "wattweek/read/keys.hpp"

namespace wattweek::docs {
namespace {

const std::string kDocument = "docs/glossary.md";
const std::string kNotUsed = "Words that are not used";

// Rows of `| word | what it is | files | JSON |`.
std::vector<Row> words() {
  std::vector<Row> all;
  for (const Section& each : sections(kDocument)) {
    if (each.heading == kNotUsed) continue;
    for (const Row& row : table_rows(each)) all.push_back(row);
  }
  return all;
}

// Everything in backticks in one column.
std::set<std::string> spelt(std::size_t column) {
  std::set<std::string> all;
  for (const Row& row : words()) all.merge(in_backticks(row.at(column)));
  return all;
}

std::set<std::string> keys_of_files() {
  std::set<std::string> all;
  for (const auto kind : {read::FileKind::study, read::FileKind::profile, read::FileKind::tariff}) {
    for (const read::KeyTable& table : read::key_tables(kind)) {
      all.insert(table.keys.begin(), table.keys.end());
    }
  }
  return all;
}

void check_each_in(const std::set<std::string>& some, const std::set<std::string>& all,
                   const char* what) {
  for (const std::string& one : some) CHECK_MESSAGE(all.count(one) == 1, what << one);
}

bool is_letter(char c) { return std::isalpha(static_cast<unsigned char>(c)) != 0; }

// In lower case on one line. A key counts as the words that it is made of.
std::string lower(std::string text) {
  for (char& c : text) {
    c = c == '\n' || c == '_' ? ' '
                              : static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  }
  return text;
}

// Does the word stand in the text by itself, or with an s behind it? Both in lower case.
bool says(const std::string& text, const std::string& word) {
  for (std::size_t at = text.find(word); at != text.npos; at = text.find(word, at + 1)) {
    std::size_t end = at + word.size();
    if (end < text.size() && text[end] == 's') ++end;
    const bool begins = at == 0 || !is_letter(text[at - 1]);
    if (begins && (end == text.size() || !is_letter(text[end]))) return true;
  }
  return false;
}

// The other documents, in lower case.
std::map<std::string, std::string> other_documents() {
  std::map<std::string, std::string> texts;
  for (const std::string& document : all_documents()) {
    if (document != kDocument) texts[document] = lower(text_of_document(document));
  }
  return texts;
}

TEST_CASE("docs/glossary.md: each word stands once, with one sentence or phrase") {
  std::set<std::string> seen;
  for (const Row& row : words()) {
    CAPTURE(row.front());
    REQUIRE(row.size() == 4);
    CHECK(seen.insert(row.front()).second);
    CHECK(row[1].size() > 10);
    CHECK(row[1].find(". ") == row[1].npos);
  }
  CHECK(seen.size() > 50);
}

TEST_CASE("docs/glossary.md: each key of the files has its word, and no other is named") {
  check_each_in(keys_of_files(), spelt(2), "key without a word: ");
  check_each_in(spelt(2), keys_of_files(), "no reader knows the key ");
}

TEST_CASE("docs/glossary.md: each member of the JSON that it names is described") {
  std::set<std::string> members;
  for (const Section& each : sections("docs/json.md")) members.merge(first_cells(each));
  check_each_in(spelt(3), members, "docs/json.md has no member ");
}

TEST_CASE("docs/glossary.md: results of candidates, lifetimes and comparisons have their words") {
  const std::set<std::string> named = spelt(3);
  const std::string chapter = "wattweek-estimate-1";
  for (const char* heading : {"`candidates[].lifetime`", "`comparison.rows[]`", "`candidates[]`"}) {
    for (const std::string& member : first_cells(section("docs/json.md", chapter, heading))) {
      const bool is_name = member == "id" || member == "name";
      CHECK_MESSAGE((is_name || named.count(member) == 1), heading << ": " << member);
    }
  }
}

TEST_CASE("docs/glossary.md: each word is used in another document") {
  const auto texts = other_documents();
  for (const Row& row : words()) {
    bool used = false;
    for (const auto& text : texts) used = used || says(text.second, lower(row.front()));
    CHECK_MESSAGE(used, "never used: " << row.front());
  }
}

TEST_CASE("documents: no word stands for what the glossary has another word for") {
  const auto texts = other_documents();
  const std::vector<Row> pairs = table_rows(section(kDocument, "", kNotUsed));
  CHECK(pairs.size() > 5);
  for (const Row& pair : pairs) {
    for (const auto& document : texts) {
      CAPTURE(document.first);
      CHECK_MESSAGE(!says(document.second, pair[0]), pair[0] << " stands for " << pair[1]);
    }
  }
}

TEST_CASE("documents: a word is found by itself and with an s, not inside another") {
  CHECK(says("by tiers of kwh", "tier"));
  CHECK(says("time of use", "time of use"));
  CHECK_FALSE(says("a frontier", "tier"));
  CHECK_FALSE(says("tiered", "tier"));
}

}  // namespace
}  // namespace wattweek::docs
