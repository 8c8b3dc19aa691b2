#include <fmt/format.h>

#include "cli/completions.hpp"
#include "cli/placeholder.hpp"
#include "cli/quoted.hpp"

namespace wattweek::cli {
namespace {

constexpr int kMostPlaces = 9;  ///< With more operands than this, any number is accepted.

constexpr std::string_view kClosing = R"(
# Loaded by its name from a folder of completions, or read by hand.
if [[ $funcstack[1] == _wattweek ]]; then
  _wattweek "$@"
else
  compdef _wattweek wattweek
fi
)";

std::string list_of_commands(const std::vector<Command>& table) {
  std::string text = "_wattweek_commands() {\n  local -a names=(\n";
  for (const Command& command : table) {
    const std::string name = backslashed(command.name, "\\:");
    text += fmt::format("    {}\n", single_quoted(name + ':' + backslashed(command.summary, "\\")));
  }
  return text + "  )\n  _describe -t commands command names\n}\n";
}

/// What `_arguments` does at this place. Its words are read by the shell once more.
std::string action(const Accepted& accepted) {
  std::string words;
  switch (accepted.place) {
    case Place::word:
      for (const std::string_view word : accepted.words) {
        words += (words.empty() ? "" : " ") + single_quoted(word);
      }
      return '(' + backslashed(words, ":") + ')';
    case Place::command:
      return "_wattweek_commands";
    case Place::file:
      return "_files -g " + single_quoted("*" + std::string(accepted.ending));
    case Place::folder:
      return "_files -/";
    case Place::free_text:
      break;
  }
  return " ";
}

std::string explained(const Option& option) {
  return '[' + backslashed(option.help, "\\[]:") + ']';
}

/// One for each way to write the option; none is offered once another has been given.
std::vector<std::string> specifications(const Command& command, const Option& option) {
  std::string after = explained(option);
  if (!option.value.empty()) {
    after += fmt::format(":{}:{}", backslashed(option.value, ":"),
                         action(accepted_at(command, option.value)));
  }
  const char* repeats = option.repeats ? "*" : "";
  const std::string name = dashed(option) + (option.value.empty() ? "" : "=") + after;
  if (option.letter == '\0') return {repeats + name};
  const std::string others =
      option.repeats ? "" : fmt::format("({} {})", dashed_letter(option), dashed(option));
  const std::string letter = dashed_letter(option) + (option.value.empty() ? "" : "+") + after;
  return {others + repeats + letter, others + repeats + name};
}

/// The operands, place by place.
std::vector<std::string> operands(const Command& command) {
  const std::string what = fmt::format("{}:{}", backslashed(bare(command.operands), ":"),
                                       action(accepted_at(command, command.operands)));
  if (command.most_operands > kMostPlaces) return {"*:" + what};
  std::vector<std::string> places;
  for (int place = 1; place <= command.most_operands; ++place) {
    const char* colons = place > command.least_operands ? "::" : ":";
    places.push_back(fmt::format("{}{}{}", place, colons, what));
  }
  return places;
}

std::string arguments(const std::vector<std::string>& specifications, const std::string& indent) {
  std::string text = indent + "_arguments -S :";
  for (const std::string& each : specifications) {
    text += " \\\n" + indent + "  " + single_quoted(each);
  }
  return text + '\n';
}

/// Nothing else stands beside it.
std::vector<std::string> help_specifications() {
  const std::string after = explained(kHelpOption);
  return {"(- *)" + dashed_letter(kHelpOption) + after, "(- *)" + dashed(kHelpOption) + after};
}

std::string of_command(const Command& command) {
  std::vector<std::string> all;
  for (const Option& option : command.options) {
    for (std::string& each : specifications(command, option)) all.push_back(std::move(each));
  }
  for (const std::string& each : help_specifications()) all.push_back(each);
  for (const std::string& each : operands(command)) all.push_back(each);
  return fmt::format("    {})\n{}      ;;\n", single_quoted(command.name),
                     arguments(all, "      "));
}

std::string first_word() {
  std::vector<std::string> all = help_specifications();
  all.push_back(fmt::format("(- *)--{}{}", kVersionOption.name, explained(kVersionOption)));
  all.emplace_back("1:command:_wattweek_commands");
  return "  if ((CURRENT == 2)); then\n" + arguments(all, "    ") + "    return\n  fi\n";
}

}  // namespace

std::string zsh_completion(const std::vector<Command>& table) {
  std::string text = "#compdef wattweek\n# Tab completion of wattweek for zsh.\n\n" +
                     list_of_commands(table) + "\n_wattweek() {\n  local curcontext=$curcontext\n" +
                     first_word() +
                     "  shift words\n  ((CURRENT -= 1))\n"
                     "  curcontext=\"${curcontext%:*}-$words[1]:\"\n  case $words[1] in\n";
  for (const Command& command : table) text += of_command(command);
  return text + "  esac\n}\n" + std::string(kClosing);
}

}  // namespace wattweek::cli
