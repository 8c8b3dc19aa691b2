#pragma once
// Every table and key that the three kinds of file know, in one list. The readers refuse
// whatever is not in it, name the nearest word in it, and say where a misplaced key belongs;
// the documentation and any schema are checked against it.

#include <string>
#include <string_view>
#include <vector>

#include "wattweek/read/read.hpp"

namespace wattweek::read {

/// How often a table may stand in a file.
enum class TableForm {
  single,    ///< `[household]`, once.
  repeated,  ///< `[[candidate]]`, once for each.
};

/// One table of a kind of file and the keys that it knows, sub-tables included.
struct KeyTable {
  std::string path;  ///< `candidate.device`; empty: the top of the file; `*`: any name.
  TableForm form = TableForm::single;
  std::vector<std::string_view> keys;  ///< Empty where the user chooses the names.
  bool any_key = false;                ///< The user chooses the names.
};

/// All tables of a kind of file, the top of the file first.
const std::vector<KeyTable>& key_tables(FileKind kind);

/// The table at `path`, null where there is none.
const KeyTable* key_table(FileKind kind, std::string_view path);

/// The top-level keys of this kind of file that no other kind has.
std::vector<std::string_view> telling_keys(FileKind kind);

}  // namespace wattweek::read
