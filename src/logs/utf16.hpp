#pragma once
// UTF-16 text, as some programs write it, into UTF-8.

#include <memory>
#include <optional>
#include <string_view>

#include "wattweek/logs/log.hpp"

namespace wattweek::logs {

struct Utf16 {
  bool big_end_first = false;
  std::size_t mark_bytes = 0;  ///< Of the byte-order mark; 0: there is none.
};

/// Whether a text that begins so is UTF-16: by its mark, or since every other byte is 0.
std::optional<Utf16> utf16_of(std::string_view beginning);

/// In UTF-8; what is no character becomes U+FFFD.
std::unique_ptr<ByteSource> from_utf16(std::unique_ptr<ByteSource> source, bool big_end_first);

}  // namespace wattweek::logs
