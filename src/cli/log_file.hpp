#pragma once
// Files of any size, read as they stream by.

#include <string>
#include <variant>

#include "wattweek/logs/log.hpp"
#include "wattweek/read/read.hpp"

namespace wattweek::cli {

/// A file that the command line names, of any size. What is no regular file is refused before it is
/// opened. A file that grows or shrinks while it is read is told by its source's `failure`.
std::variant<logs::LogFile, read::Unreadable> log_file(const std::string& path);

}  // namespace wattweek::cli
