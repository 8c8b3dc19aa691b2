#include "schema.hpp"

#include <doctest/doctest.h>

#include "markdown.hpp"

namespace wattweek::docs {

namespace {

const Json* member(const Json& node, const char* name) {
  const auto found = node.find(name);
  return found == node.end() ? nullptr : &*found;
}

class Collector {
 public:
  explicit Collector(const Json& root) : root_(root) {}

  void visit(const Json& unresolved, const std::string& path, bool is_repeated) {
    const Json& node = resolved(root_, unresolved);
    const Json* entry = member(node, "additionalProperties");
    const bool has_free_keys = entry != nullptr && entry->is_object();
    if (const Json* items = member(node, "items"); items != nullptr && !node.contains("properties"))
      visit(*items, path, true);
    if (!node.contains("properties") && !has_free_keys) return;
    tables_[path] = {node, is_repeated};
    if (has_free_keys) visit(*entry, path + ".*", false);
    for (const auto& [key, below] : properties_of(node).items()) {
      visit(below, path.empty() ? key : path + "." + key, false);
    }
  }

  std::map<std::string, SchemaTable> take() { return std::move(tables_); }

 private:
  const Json& root_;
  std::map<std::string, SchemaTable> tables_;
};

}  // namespace

std::string schema_document(const std::string& kind) {
  return "docs/schema/" + kind + ".schema.json";
}

Json schema_of(const std::string& kind) {
  return Json::parse(text_of_document(schema_document(kind)));
}

const Json& resolved(const Json& root, const Json& node) {
  const Json* reference = member(node, "$ref");
  if (reference == nullptr) return node;
  const std::string target = reference->get<std::string>();
  REQUIRE_MESSAGE(target.substr(0, 1) == "#", "not in the same file: " << target);
  const Json::json_pointer pointer(target.substr(1));
  REQUIRE_MESSAGE(root.contains(pointer), "no definition: " << target);
  return root.at(pointer);
}

std::map<std::string, SchemaTable> schema_tables(const Json& root) {
  Collector collector(root);
  collector.visit(root, "", false);
  return collector.take();
}

const Json& properties_of(const Json& table) {
  static const Json none = Json::object();
  const Json* properties = member(table, "properties");
  return properties == nullptr ? none : *properties;
}

Json key_schema(const Json& root, const Json& table, const std::string& key) {
  return resolved(root, table.at("properties").at(key));
}

Json words_of(const Json& key) {
  if (const Json* words = member(key, "enum")) return *words;
  for (const Json& choice : key.value("anyOf", Json::array())) {
    if (const Json* words = member(choice, "enum")) return *words;
  }
  return Json::array();
}

}  // namespace wattweek::docs
