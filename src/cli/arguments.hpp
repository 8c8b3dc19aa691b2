#pragma once
// The words of the command line, held against the table of commands.

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "cli/commands.hpp"

namespace wattweek::cli {

/// The words after the command, taken apart.
struct Arguments {
  /// By option, in the order given; a switch has one "". Only options that repeat have several.
  std::map<std::string, std::vector<std::string>, std::less<>> values;
  std::vector<std::string> operands;
  bool wants_help = false;

  bool has(std::string_view option) const { return values.find(option) != values.end(); }
  /// Of an option that repeats, the first.
  std::optional<std::string> value(std::string_view option) const;
  /// All values of an option that repeats; none where it is not given.
  std::vector<std::string> list(std::string_view option) const;
};

/// Why a command line is refused.
struct Misuse {
  std::string message;
};

/// Takes the words after the command apart. Options are never guessed from their beginnings.
std::variant<Arguments, Misuse> parse(const Command& command,
                                      const std::vector<std::string>& words);

/// A finite number between two limits, both included, written with a decimal point whatever the
/// locale; the message names the option.
struct Limits {
  double least = 0;
  double most = 0;
  std::string_view meaning;  ///< What is accepted, in words.
};
std::variant<double, Misuse> number(std::string_view option, const std::string& text,
                                    const Limits& limits);

/// A whole number between two limits, both included.
std::variant<int, Misuse> whole_number(std::string_view option, const std::string& text, int least,
                                       int most);

/// The value of `--format`, or the command's first format.
std::variant<std::string, Misuse> format_of(const Command& command, const Arguments& arguments);

}  // namespace wattweek::cli
