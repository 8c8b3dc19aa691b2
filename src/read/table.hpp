#pragma once
// One table of a file and the keys that it knows (`key_tables`): whoever opens it has its
// unknown keys reported, and gets at its values and sub-tables by name.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "value.hpp"
#include "wattweek/read/keys.hpp"

namespace wattweek::read {

/// One key of a table whose keys the user chooses.
struct Entry {
  std::string key;
  diag::Place key_place;
  Value value;
};

class Table {
 public:
  /// `path` is the table's name in messages; its keys are those of `key_path` in `key_tables`.
  Table(File& file, const toml::table& table, std::string path, std::string_view key_path);
  Table(File& file, const toml::table& table, const std::string& path)
      : Table(file, table, path, path) {}

  File& file() const { return *file_; }
  /// Where its header stands; the file's start for the top of the file.
  diag::Place place() const;
  /// The whole name of a key: `candidate.device.watts.busy`.
  std::string name_of(std::string_view key) const;

  bool has(std::string_view key) const { return table_->contains(key); }
  std::optional<Value> find(std::string_view key) const;
  /// The value of a key that must be there; a missing one is reported.
  std::optional<Value> require(std::string_view key, std::string_view accepted) const;
  /// Where the key itself stands. \pre `has(key)`
  diag::Place key_place(std::string_view key) const;

  /// The sub-table of that name, nothing where there is none or the key is something else
  /// (which is reported).
  std::optional<Table> single(std::string_view key) const;
  /// The tables of an array of tables, in file order.
  std::vector<Table> repeated(std::string_view key) const;
  /// The same; none at all is reported.
  std::vector<Table> at_least_one(std::string_view key) const;
  /// All entries, in file order. \pre The user chooses the keys.
  std::vector<Entry> entries() const;
  /// The table that an entry is, nothing where it is none.
  std::optional<Table> entry_table(const Entry& entry) const;

 private:
  void report_unknown_keys() const;
  Table child(const toml::table& table, std::string_view key) const;

  File* file_;
  const toml::table* table_;
  std::string path_;
  const KeyTable* keys_;
};

}  // namespace wattweek::read
