#pragma once
// What may stand at a place of the command line, told by how its placeholder in the table of
// commands is spelt.

#include <string_view>
#include <vector>

#include "cli/commands.hpp"

namespace wattweek::cli {

enum class Place { free_text, word, command, file, folder };

struct Accepted {
  Place place = Place::free_text;
  std::vector<std::string_view> words{};  ///< With `word`: all that are accepted.
  std::string_view ending{};              ///< With `file`, such as `.toml`; empty: any file.
};

/// `STUDY.toml` and `FILE.toml...` are files of that ending, `LOG` and `FILE` are files of any,
/// `DIR` a folder, `COMMAND` a command, `FORMAT` one of the command's formats, `low|high` one of
/// these words; all else is free text.
Accepted accepted_at(const Command& command, std::string_view placeholder);

/// Without what says how often it stands: `COMMAND` of `[COMMAND]`, `FILE.toml` of
/// `FILE.toml...`.
std::string_view bare(std::string_view placeholder);

}  // namespace wattweek::cli
