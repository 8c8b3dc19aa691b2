#include "table.hpp"

#include <algorithm>
#include <cassert>

#include "unknown_key.hpp"

namespace wattweek::read {

namespace {

std::string header_of(std::string_view path, TableForm form) {
  const std::string name(path);
  return form == TableForm::repeated ? "[[" + name + "]]" : "[" + name + "]";
}

bool starts_before(const toml::source_position& a, const toml::source_position& b) {
  return a.line != b.line ? a.line < b.line : a.column < b.column;
}

}  // namespace

Table::Table(File& file, const toml::table& table, std::string path, std::string_view key_path)
    : file_(&file),
      table_(&table),
      path_(std::move(path)),
      keys_(key_table(file.kind(), key_path)) {
  assert(keys_ != nullptr);
  if (!keys_->any_key) report_unknown_keys();
}

diag::Place Table::place() const {
  return path_.empty() ? file_->start() : file_->place(table_->source().begin);
}

std::string Table::name_of(std::string_view key) const {
  return path_.empty() ? std::string(key) : path_ + "." + std::string(key);
}

std::optional<Value> Table::find(std::string_view key) const {
  assert(keys_->any_key ||
         std::find(keys_->keys.begin(), keys_->keys.end(), key) != keys_->keys.end());
  const toml::node* node = table_->get(key);
  if (node == nullptr) return std::nullopt;
  return Value(*file_, *node, name_of(key));
}

std::optional<Value> Table::require(std::string_view key, std::string_view accepted) const {
  auto value = find(key);
  if (!value) {
    file_->report(place(), name_of(key) + " is missing: expected " + std::string(accepted));
  }
  return value;
}

diag::Place Table::key_place(std::string_view key) const {
  const auto found = table_->find(key);
  assert(found != table_->end());
  return file_->place(found->first.source().begin);
}

Table Table::child(const toml::table& table, std::string_view key) const {
  return Table(*file_, table, name_of(key));
}

std::optional<Table> Table::single(std::string_view key) const {
  const auto value = find(key);
  if (!value) return std::nullopt;
  if (const toml::table* table = value->node().as_table()) return child(*table, key);
  const std::string header = header_of(name_of(key), TableForm::single);
  const toml::array* array = value->node().as_array();
  if (array != nullptr && array->is_array_of_tables()) {
    file_->report(value->place(), header_of(name_of(key), TableForm::repeated) +
                                      " has double brackets: expected " + header +
                                      " with single ones, once");
    return child(*array->front().as_table(), key);
  }
  value->refuse("a table " + header);
  return std::nullopt;
}

std::vector<Table> Table::repeated(std::string_view key) const {
  std::vector<Table> tables;
  const auto value = find(key);
  if (!value) return tables;
  const std::string header = header_of(name_of(key), TableForm::repeated);
  if (const toml::table* table = value->node().as_table()) {
    const std::string found =
        table->is_inline() ? value->typed() : header_of(name_of(key), TableForm::single);
    file_->report(value->place(),
                  found + " is one table: expected " + header +
                      " with double brackets, once for each, or an array [ {...} ]");
    tables.push_back(child(*table, key));
    return tables;
  }
  if (!value->node().is_array()) value->refuse("tables " + header + ", or an array [ {...} ]");
  for (const Value& element : value->elements()) {
    if (const toml::table* table = element.node().as_table()) {
      tables.push_back(child(*table, key));
    } else {
      element.refuse("tables " + header + ", or an array [ {...} ]");
    }
  }
  return tables;
}

std::vector<Table> Table::at_least_one(std::string_view key) const {
  const std::string accepted = "at least one " + header_of(name_of(key), TableForm::repeated);
  const auto value = require(key, accepted);
  const toml::array* array = value ? value->node().as_array() : nullptr;
  if (array != nullptr && array->empty()) value->refuse(accepted);
  return repeated(key);
}

std::vector<Entry> Table::entries() const {
  std::vector<const toml::key*> keys;
  for (auto&& [key, node] : *table_) keys.push_back(&key);
  const auto before = [](const toml::key* a, const toml::key* b) {
    return starts_before(a->source().begin, b->source().begin);
  };
  std::sort(keys.begin(), keys.end(), before);
  std::vector<Entry> entries;
  for (const toml::key* key : keys) {
    const std::string word(key->str());
    entries.push_back({word, file_->place(key->source().begin),
                       Value(*file_, *table_->get(word), name_of(word))});
  }
  return entries;
}

std::optional<Table> Table::entry_table(const Entry& entry) const {
  const toml::table* table = entry.value.node().as_table();
  if (table == nullptr) return std::nullopt;
  return Table(*file_, *table, entry.value.name(), keys_->path + ".*");
}

void Table::report_unknown_keys() const {
  for (auto&& [key, node] : *table_) {
    const std::string_view word = key.str();
    const bool known = std::find(keys_->keys.begin(), keys_->keys.end(), word) != keys_->keys.end();
    if (known) continue;
    const bool is_table = node.is_table() || node.is_array_of_tables();
    const std::string advice = unknown_key_advice({file_->kind(), *keys_, word, is_table});
    file_->report(file_->place(key.source().begin),
                  "unknown key " + name_of(shortened(word)) + ": " + advice);
  }
}

}  // namespace wattweek::read
