#pragma once
// A table of commands whose texts would command a shell or roff that took them for its own.

#include <string>
#include <string_view>
#include <vector>

#include "cli/commands.hpp"

namespace wattweek::cli {

inline constexpr std::string_view kHostile =
    R"(it's "5%" $(touch pwned) `touch pwned` [a:b] (c) {d} \e * ~ ^ | ; & < > # !x)";

inline const std::vector<Command>& hostile_table() {
  static const std::vector<Command> kTable = {
      {"go",
       "STUDY.toml",
       1,
       1,
       kHostile,
       kHostile,
       {{"how", "fast|$(touch pwned)|s'low", kHostile}, {"where", "DIR", kHostile}},
       {},
       kHostile},
      {"other", "[COMMAND]", 0, 1, kHostile, ".dots first", {}, {}, "wattweek other"}};
  return kTable;
}

}  // namespace wattweek::cli
