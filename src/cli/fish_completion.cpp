#include <fmt/format.h>

#include "cli/completions.hpp"
#include "cli/placeholder.hpp"
#include "cli/quoted.hpp"

namespace wattweek::cli {
namespace {

// Files are those that fish offers to a command of which it knows nothing.
constexpr std::string_view kOpening = R"(# Tab completion of wattweek for fish 3 and later.

function __wattweek_no_command
    test (count (commandline -opc)) -eq 1
end

function __wattweek_command_is
    set -l words (commandline -opc)
    test (count $words) -gt 1; and test "$words[2]" = "$argv[1]"
end

# The files with an ending, and folders, since one may lead to such a file.
function __wattweek_files
    set -l word (commandline -ct | string replace -r -- '^--[^=]*=' '')
    set -l ending (string escape --style=regex -- $argv[1])
    complete -C "__wattweek_unknown_to_all $word" | string match -r -- ".*(?:/|$ending)\$"
end

complete -c wattweek -f
)";

/// One word for fish, whatever it holds.
std::string quoted(std::string_view text) {
  return is_plain(text) ? std::string(text) : '\'' + backslashed(text, "\\'") + '\'';
}

std::string condition(const Command& command) {
  return quoted("__wattweek_command_is " + quoted(command.name));
}

std::string names_in(const std::vector<Command>& table) {
  std::string names;
  for (const Command& command : table) names += (names.empty() ? "" : " ") + quoted(command.name);
  return names;
}

/// The end of the line that offers what is accepted; `-a` reads its words once more.
std::string offer(const std::vector<Command>& table, const Accepted& accepted) {
  std::string words;
  switch (accepted.place) {
    case Place::word:
      for (const std::string_view word : accepted.words) {
        words += (words.empty() ? "" : " ") + quoted(word);
      }
      return " -a " + quoted(words);
    case Place::command:
      return " -a " + quoted(names_in(table));
    case Place::file:
      return " -a " + quoted("(__wattweek_files " + quoted(accepted.ending) + ")");
    case Place::folder:
      return " -a " + quoted("(__wattweek_files /)");
    case Place::free_text:
      break;
  }
  return "";
}

std::string line(const std::string& when, const std::string& what) {
  return fmt::format("complete -c wattweek -n {} {}\n", when, what);
}

/// `-s o -l output`
std::string names(const Option& option) {
  const std::string letter = option.letter == '\0' ? "" : fmt::format("-s {} ", option.letter);
  return letter + "-l " + quoted(option.name);
}

std::string help_option(const std::string& when) {
  return line(when, fmt::format("{} -d {}", names(kHelpOption), quoted(kHelpOption.help)));
}

std::string of_command(const std::vector<Command>& table, const Command& command) {
  std::string text =
      '\n' + line("__wattweek_no_command", fmt::format("-a {} -d {}", quoted(quoted(command.name)),
                                                       quoted(command.summary)));
  for (const Option& option : command.options) {
    const std::string value =
        option.value.empty() ? "" : " -x" + offer(table, accepted_at(command, option.value));
    text += line(condition(command),
                 fmt::format("{}{} -d {}", names(option), value, quoted(option.help)));
  }
  text += help_option(condition(command));
  const std::string operands = offer(table, accepted_at(command, command.operands));
  return operands.empty() ? text : text + line(condition(command), operands.substr(1));
}

}  // namespace

std::string fish_completion(const std::vector<Command>& table) {
  std::string text(kOpening);
  text += help_option("__wattweek_no_command");
  text += line("__wattweek_no_command", fmt::format("-l {} -d {}", quoted(kVersionOption.name),
                                                    quoted(kVersionOption.help)));
  for (const Command& command : table) text += of_command(table, command);
  return text;
}

}  // namespace wattweek::cli
