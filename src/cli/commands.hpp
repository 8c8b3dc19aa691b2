#pragma once
// The commands and their options, said once: the parser, the help, the messages about unknown
// words, the man page and the completions of the shells all come from this table.

#include <string>
#include <string_view>
#include <vector>

namespace wattweek::cli {

/// What the program tells, in half a line.
inline constexpr std::string_view kPurpose = "what an always-on machine at home will cost";

/// How an operand or a value is spelt tells the shells what to offer, see placeholder.hpp.
struct Option {
  std::string_view name;   ///< Without the dashes.
  std::string_view value;  ///< What stands after it, such as `N`; empty: it is a switch.
  std::string_view help;
  bool required = false;
  bool repeats = false;  ///< May be given several times; see `Arguments::list`.
  char letter = '\0';    ///< The short form, `o` of `-o`; none where it is 0.
};

/// `--output`, and `-o`; the latter is empty where there is no short form.
std::string dashed(const Option& option);
std::string dashed_letter(const Option& option);

/// Every command takes `--help`, and so does the program without a command.
inline constexpr Option kHelpOption{
    "help", "", "what a command does, its options and an example", false, false, 'h'};
/// Stands in place of a command.
inline constexpr Option kVersionOption{"version", "", "the version of the program"};

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
