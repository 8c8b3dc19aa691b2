#pragma once
// The commands and their options, said once: the parser, the help and the messages about
// unknown words all come from this table.

#include <string_view>
#include <vector>

namespace wattweek::cli {

struct Option {
  std::string_view name;   ///< Without the dashes.
  std::string_view value;  ///< What stands after it, such as `N`; empty: it is a switch.
  std::string_view help;
  bool required = false;
};

struct Command {
  std::string_view name;
  std::string_view operands;  ///< As in the usage line; empty: none.
  int least_operands = 0;
  int most_operands = 0;
  std::string_view summary;  ///< Half a line.
  std::string_view description;
  std::vector<Option> options;
  std::vector<std::string_view> formats;  ///< What `--format` accepts, the default first.
  std::string_view example;
};

/// In the order in which help lists them.
const std::vector<Command>& commands();

/// Null where there is none of that name.
const Command* command_named(std::string_view name);

std::vector<std::string_view> command_names();

}  // namespace wattweek::cli
