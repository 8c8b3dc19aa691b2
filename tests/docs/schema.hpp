#pragma once
// The JSON Schemas of docs/schema as a test sees them: each table of a kind of file with the part
// of the schema that describes it.

#include <map>
#include <nlohmann/json.hpp>
#include <string>

namespace wattweek::docs {

/// In the order of the file.
using Json = nlohmann::ordered_json;

/// `docs/schema/study.schema.json` for `study`.
std::string schema_document(const std::string& kind);

Json schema_of(const std::string& kind);

/// The node itself, or what its `$ref` names; fails the test where that leads nowhere.
const Json& resolved(const Json& root, const Json& node);

struct SchemaTable {
  Json node;
  bool is_repeated = false;  ///< It stands in an array.
};

/// The tables of a schema by the path that `read::KeyTable` gives them.
std::map<std::string, SchemaTable> schema_tables(const Json& root);

/// The schemas of a table's keys, by key; none where the user chooses the names.
const Json& properties_of(const Json& table);

/// The schema of a key of a table.
Json key_schema(const Json& root, const Json& table, const std::string& key);

/// The words that the key may have, empty where it is not a choice of words.
Json words_of(const Json& key);

}  // namespace wattweek::docs
