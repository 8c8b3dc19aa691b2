// docs/schema against the readers and docs/files.md: the same tables, keys, words and defaults.
// What an independent validator makes of the schemas is tested by validate_schema.py.

#include "schema.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cstdlib>
#include <fstream>
#include <utility>

#include "key_sections.hpp"
#include "toml_examples.hpp"

namespace wattweek::docs {
namespace {

using read::KeyTable;

std::string name_of(const KindOfFile& file, const std::string& path) {
  return file.name + (path.empty() ? ", at the top" : ", table " + path);
}

// What is not as the reader has it, in words.
std::string difference(const KeyTable& table, const SchemaTable& found) {
  std::string text;
  const bool is_repeated = table.form == read::TableForm::repeated;
  if (found.is_repeated != is_repeated) text += "; single and repeated are mixed up";
  const Json& known = properties_of(found.node);
  for (const std::string_view key : table.keys) {
    if (!known.contains(key)) text += "; the schema lacks the key " + std::string(key);
  }
  for (const auto& entry : known.items()) {
    const bool is_key =
        std::find(table.keys.begin(), table.keys.end(), entry.key()) != table.keys.end();
    if (!is_key) text += "; the reader does not know the key " + entry.key();
  }
  const bool is_closed = found.node.value("additionalProperties", Json()) == Json(false);
  if (is_closed == table.any_key) text += "; the schema takes other keys than the reader";
  return text;
}

TEST_CASE("schemas: every table of a file has the keys that the reader knows, and no other") {
  for (const KindOfFile& file : kinds_of_file()) {
    auto tables = schema_tables(schema_of(file.name));
    for (const KeyTable& table : read::key_tables(file.kind)) {
      const auto found = tables.extract(table.path);
      const std::string problem =
          found.empty() ? "; the schema lacks the table" : difference(table, found.mapped());
      CHECK_MESSAGE(problem.empty(), name_of(file, table.path) << problem);
    }
    for (const auto& left_over : tables) {
      CHECK_MESSAGE(false, name_of(file, left_over.first) << "; the reader has no such table");
    }
  }
}

TEST_CASE("schemas: every key has a title and says what it means") {
  for (const KindOfFile& file : kinds_of_file()) {
    const Json root = schema_of(file.name);
    for (const auto& table : schema_tables(root)) {
      for (const auto& entry : properties_of(table.second.node).items()) {
        const Json key = resolved(root, entry.value());
        const bool is_told = key.value("title", "") != "" && key.value("description", "") != "";
        CHECK_MESSAGE(is_told, name_of(file, table.first) << ", key " << entry.key());
      }
    }
  }
}

// The cell `0` or `"linear"` of the column "default"; nothing where it is in words.
Json default_in(const std::string& cell) {
  std::string text = cell;
  text.erase(std::remove(text.begin(), text.end(), '`'), text.end());
  return Json::accept(text) ? Json::parse(text) : Json();
}

bool requires_key(const Json& schema, const std::string& key) {
  const Json keys = schema.value("required", Json::array());
  return std::find(keys.begin(), keys.end(), Json(key)) != keys.end();
}

// Is there a default, and is it that of the row? Where one key stands in place of another, the
// table's `else` requires it.
bool check_row(const std::string& where, const Json& table, const std::string& cell,
               const std::string& key, const Json& schema) {
  const Json by_default = schema.value("default", Json());
  CHECK_MESSAGE(by_default == default_in(cell), where << ": default " << cell);
  const bool is_due = cell.substr(0, 8) == "required" || cell == "at least one";
  if (requires_key(table, key)) {
    CHECK_MESSAGE(is_due, where << ": the schema requires it");
  } else if (is_due) {
    CHECK_MESSAGE(requires_key(table.value("else", Json::object()), key), where << ": " << cell);
  }
  return !by_default.is_null();
}

int check_rows(const KindOfFile& file, const KeyTable& table) {
  const Json root = schema_of(file.name);
  const Json node = schema_tables(root).at(table.path).node;
  int defaults = 0;
  for (const Row& row : table_rows(section_of(file, table))) {
    for (const std::string& key : in_backticks(row.front())) {
      const std::string where = name_of(file, table.path) + ", key " + key;
      const bool has_one = check_row(where, node, row.at(2), key, key_schema(root, node, key));
      defaults += has_one ? 1 : 0;
    }
  }
  return defaults;
}

TEST_CASE("schemas: defaults, and what must be there, are those of docs/files.md") {
  int defaults = 0;
  for (const KindOfFile& file : kinds_of_file()) {
    for (const KeyTable& table : read::key_tables(file.kind)) {
      if (!is_inline(file.kind, table) && !table.any_key) defaults += check_rows(file, table);
    }
  }
  CHECK(defaults > 15);
}

// A number or a range [low, high]: the ends have the bounds that a single number has.
void check_range(const Json& root, const Json& key, const std::string& where) {
  const Json& end = resolved(root, key.at("items"));
  for (const std::string bound : {"minimum", "maximum", "exclusiveMinimum", "exclusiveMaximum"}) {
    CHECK_MESSAGE(key.value(bound, Json()) == end.value(bound, Json()), where << ": " << bound);
  }
  CHECK_MESSAGE(end.at("type") == "number", where);
  CHECK_MESSAGE(key.value("minItems", 0) == 2, where);
  CHECK_MESSAGE(key.value("maxItems", 0) == 2, where);
}

TEST_CASE("schemas: the ends of a range have the bounds of the number in whose place it stands") {
  int ranges = 0;
  for (const KindOfFile& file : kinds_of_file()) {
    const Json root = schema_of(file.name);
    const Json number_or_range{"number", "array"};
    for (const auto& table : schema_tables(root)) {
      for (const auto& entry : properties_of(table.second.node).items()) {
        const Json key = resolved(root, entry.value());
        if (key.value("type", Json()) != number_or_range) continue;
        check_range(root, key, name_of(file, table.first) + ", key " + entry.key());
        ++ranges;
      }
    }
  }
  CHECK(ranges > 30);
}

// A key that takes one of some words, in a text that has "?" in its place.
struct Choice {
  std::string kind;
  std::string path;
  std::string key;
  std::string text;
};
const std::vector<Choice> kChoices{
    {"study", "", "holidays_as", "holidays_as = \"?\"\n"},
    {"study", "workload.use", "pattern", "[[workload]]\n[[workload.use]]\npattern = \"?\"\n"},
    {"study", "candidate.device.rest", "state",
     "[[candidate]]\n[[candidate.device]]\n[[candidate.device.rest]]\nstate = \"?\"\n"},
    {"profile", "watts", "curve", "[watts]\nidle = 9\ncurve = \"?\"\n"},
    {"tariff", "", "holidays_as", "holidays_as = \"?\"\n"},
    {"tariff", "", "blocks_per", "blocks_per = \"?\"\n"},
};

std::vector<diag::Diagnostic> problems_of(const Choice& choice) {
  const read::SourceText source{"wrong.toml", "wrong.toml", choice.text};
  if (choice.kind == "study") return read::study(source, surroundings_of(kKeysDocument)).problems;
  if (choice.kind == "profile") return read::profile(source).problems;
  return read::tariff(source).problems;
}

// The words in quotes that the reader says it expects.
Json words_of_reader(const Choice& choice) {
  Json words = Json::array();
  for (const diag::Diagnostic& problem : problems_of(choice)) {
    if (problem.message.find(choice.key + " = \"?\"") == std::string::npos) continue;
    std::string_view rest = problem.message;
    rest.remove_prefix(rest.find("expected "));
    for (std::size_t at = rest.find('"'); at != rest.npos; at = rest.find('"')) {
      const std::size_t end = rest.find('"', at + 1);
      words.push_back(std::string(rest.substr(at + 1, end - at - 1)));
      rest.remove_prefix(end + 1);
    }
  }
  return words;
}

TEST_CASE("schemas: a key that is a choice of words has the words that the reader names") {
  for (const Choice& choice : kChoices) {
    const Json root = schema_of(choice.kind);
    const Json table = schema_tables(root).at(choice.path).node;
    CAPTURE(choice.kind);
    CAPTURE(choice.key);
    const Json words = words_of_reader(choice);
    CHECK(words.size() >= 2);
    CHECK(words_of(key_schema(root, table, choice.key)).dump() == words.dump());
  }
}

TEST_CASE("schemas: every choice of words is held against the reader") {
  for (const KindOfFile& file : kinds_of_file()) {
    const Json root = schema_of(file.name);
    for (const KeyTable& table : read::key_tables(file.kind)) {
      if (is_inline(file.kind, table)) continue;
      const Json node = schema_tables(root).at(table.path).node;
      for (const std::string_view key : table.keys) {
        if (words_of(key_schema(root, node, std::string(key))).empty()) continue;
        const auto is_this = [&](const Choice& choice) {
          return choice.kind == file.name && choice.path == table.path && choice.key == key;
        };
        CHECK_MESSAGE(std::any_of(kChoices.begin(), kChoices.end(), is_this),
                      name_of(file, table.path) << ", key " << key);
      }
    }
  }
}

// A study holds profiles and a tariff, and its schema what theirs say: editors do not follow a
// reference from file to file.
Json with_copies(Json study) {
  const Json profile = schema_of("profile");
  const Json tariff = schema_of("tariff");
  Json& definitions = study.at("definitions");
  for (const Json* schema : {&profile, &tariff}) {
    for (const auto& [name, definition] : schema->at("definitions").items()) {
      definitions[name] = definition;
    }
  }
  for (const auto& [key, schema] : profile.at("properties").items()) {
    if (key != "name") definitions.at("device").at("properties")[key] = schema;
  }
  for (const char* rule : {"properties", "additionalProperties", "required", "if", "then", "else"})
    definitions.at("tariff")[rule] = tariff.at(rule);
  return study;
}

TEST_CASE("schemas: what a study's schema says of profiles and tariffs is what theirs say") {
  const std::string document = schema_document("study");
  const Json study = schema_of("study");
  const Json copied = with_copies(study);
  if (std::getenv("WATTWEEK_WRITE_SCHEMAS") != nullptr) {
    std::ofstream(std::string(WATTWEEK_SOURCE_DIR) + "/" + document) << copied.dump(2) << '\n';
  }
  const Json patch = Json::diff(schema_of("study"), copied);
  CHECK_MESSAGE(patch.empty(), "WATTWEEK_WRITE_SCHEMAS=1 copies it anew: " << patch.dump());
}

TEST_CASE("schemas: a file whose first line names its schema for the editor is read") {
  const read::SourceText source{"box.toml", "box.toml",
                                "#:schema ../docs/schema/profile.schema.json\n\n"
                                "[watts]\nidle = 9\n"};
  CHECK(read::profile(source).problems.empty());
}

}  // namespace
}  // namespace wattweek::docs
