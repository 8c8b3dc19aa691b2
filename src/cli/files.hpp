#pragma once
// Files as the user names them: found, refused with a reason, or read whole.

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "wattweek/read/read.hpp"

namespace wattweek::cli {

/// Why a file that the command line names must not be opened, if so.
std::optional<read::Unreadable> why_not_to_open(const std::string& path);

/// A file that the command line names. What is no regular file is refused before it is opened
/// (a pipe would wait for ever), and so is what is larger than 16 MiB.
std::variant<read::SourceText, read::Unreadable> read_file(const std::string& path);

/// The file system, the shipped files beside the program, and the system's time zones.
read::Surroundings surroundings();

/// Files in the order in which they were first read, each once, however it was named.
using Sources = std::vector<read::SourceText>;

void add_once(Sources& sources, read::SourceText source);

/// The same surroundings; what they hand out is added to `sources`, where these are given. A
/// shipped file is named there as the study names it, `shipped:NAME`.
read::Surroundings surroundings_noted_in(Sources* sources);

/// The names of the shipped files of a kind, sorted; empty where their folder is missing.
std::vector<std::string> shipped_names(read::ShippedKind kind);

}  // namespace wattweek::cli
