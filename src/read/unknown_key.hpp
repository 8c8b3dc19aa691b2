#pragma once
// What an unknown key may have been meant to be.

#include <string>
#include <string_view>

#include "wattweek/read/keys.hpp"

namespace wattweek::read {

struct UnknownKey {
  FileKind kind;
  const KeyTable& table;  ///< Where it stands.
  std::string_view word;
  bool is_table = false;  ///< It is the header of a table.
};

/// The nearest known key, where the key belongs, or all keys that the table knows.
std::string unknown_key_advice(const UnknownKey& key);

}  // namespace wattweek::read
