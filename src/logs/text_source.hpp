#pragma once
// The bytes of a log as text: unpacked, in UTF-8 (or a one-byte code), lines ended by '\n'.

#include <memory>
#include <string>
#include <variant>

#include "wattweek/logs/log.hpp"

namespace wattweek::logs {

/// Opens the log and takes away what is not its text: gzip, a byte-order mark, UTF-16, lines that
/// end with a carriage return alone. The reason where the bytes are no text at all.
std::variant<std::unique_ptr<ByteSource>, std::string> open_text(const LogFile& file);

}  // namespace wattweek::logs
