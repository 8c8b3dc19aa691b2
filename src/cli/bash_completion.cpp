#include <fmt/format.h>

#include "cli/completions.hpp"
#include "cli/placeholder.hpp"
#include "cli/quoted.hpp"

namespace wattweek::cli {
namespace {

// Needs no other script. Bash takes `--format=json` apart at `=`, unless the user has told it not
// to: then the word comes whole, and so must the answers.
constexpr std::string_view kOpening = R"(# Tab completion of wattweek for bash 4 and later.

# Offers those of its words that begin like the one at the cursor.
_wattweek_words() {
  local each
  for each in "$@"; do
    [[ $each == "$word"* ]] && COMPREPLY+=("$each")
  done
}

# Offers the files with an ending, and folders, since one may lead to such a file. Without an ending
# all files are offered, and folders are among them.
_wattweek_files() {
  compopt -o filenames 2>/dev/null
  mapfile -t COMPREPLY < <(compgen -f -X "!*$1" -- "$word"; [[ $1 ]] && compgen -d -- "$word")
}

_wattweek_folders() {
  compopt -o filenames 2>/dev/null
  mapfile -t COMPREPLY < <(compgen -d -- "$word")
}

_wattweek() {
  local word=$2 previous=${COMP_WORDS[COMP_CWORD - 1]} before=
  COMPREPLY=()
  [[ $word == = ]] && word=
  [[ $previous == = ]] && previous=${COMP_WORDS[COMP_CWORD - 2]}
  if [[ $word == --*=* ]]; then
    previous=${word%%=*} before=$previous= word=${word#*=}
  fi
  _wattweek_offer "${COMP_WORDS[1]}"
  COMPREPLY=("${COMPREPLY[@]/#/$before}")
}
)";

std::string call(const std::string& function, const std::vector<std::string>& words) {
  std::string text = function;
  for (const std::string& word : words) text += ' ' + single_quoted(word);
  return text;
}

std::vector<std::string> names_in(const std::vector<Command>& table) {
  std::vector<std::string> names;
  for (const Command& command : table) names.emplace_back(command.name);
  return names;
}

/// The call that offers what is accepted; empty for free text.
std::string offer(const std::vector<Command>& table, const Accepted& accepted) {
  switch (accepted.place) {
    case Place::word:
      return call("_wattweek_words", {accepted.words.begin(), accepted.words.end()});
    case Place::command:
      return call("_wattweek_words", names_in(table));
    case Place::file:
      return call("_wattweek_files", {std::string(accepted.ending)});
    case Place::folder:
      return "_wattweek_folders";
    case Place::free_text:
      break;
  }
  return "";
}

/// `--output` and `-o`, as far as there are such.
std::vector<std::string> spellings(const Option& option) {
  if (option.letter == '\0') return {dashed(option)};
  return {dashed(option), dashed_letter(option)};
}

/// What stands before a value, as a pattern of `case`.
std::string pattern(const Command& command, const Option& option) {
  std::string text;
  for (const std::string& each : spellings(option)) {
    text += (text.empty() ? "" : " | ") + single_quoted(fmt::format("{} {}", command.name, each));
  }
  return text;
}

std::string first_word(const std::vector<Command>& table) {
  return "  if ((COMP_CWORD == 1)); then\n    " + call("_wattweek_words", names_in(table)) +
         "\n    [[ $word == -* ]] && " +
         call("_wattweek_words", {dashed(kHelpOption), dashed(kVersionOption)}) +
         "\n    return\n  fi\n";
}

std::string values(const std::vector<Command>& table) {
  std::string text = "  case \"$1 $previous\" in\n";
  for (const Command& command : table) {
    for (const Option& option : command.options) {
      if (option.value.empty()) continue;
      const std::string offered = offer(table, accepted_at(command, option.value));
      text += fmt::format("    {})\n", pattern(command, option));
      if (!offered.empty()) text += "      " + offered + '\n';
      text += "      return\n      ;;\n";
    }
  }
  return text + "  esac\n";
}

std::string options(const Command& command) {
  std::vector<std::string> words;
  for (const Option& option : command.options) {
    for (std::string& each : spellings(option)) words.push_back(std::move(each));
  }
  words.push_back(dashed(kHelpOption));
  return call("_wattweek_words", words);
}

/// Where a command takes no operands, its options are offered at once.
std::string options_and_operands(const std::vector<Command>& table) {
  std::string text = "  case $1 in\n";
  for (const Command& command : table) {
    const std::string operands = offer(table, accepted_at(command, command.operands));
    text += fmt::format("    {})\n", single_quoted(command.name));
    text += operands.empty()
                ? fmt::format("      {}\n", options(command))
                : fmt::format(
                      "      if [[ $word == -* ]]; then\n        {}\n      else\n        "
                      "{}\n      fi\n",
                      options(command), operands);
    text += "      ;;\n";
  }
  return text + "  esac\n";
}

}  // namespace

std::string bash_completion(const std::vector<Command>& table) {
  return std::string(kOpening) +
         "\n# Offers what may stand at the cursor, in the command that is its argument.\n"
         "_wattweek_offer() {\n" +
         first_word(table) + values(table) + options_and_operands(table) +
         "}\n\ncomplete -F _wattweek wattweek\n";
}

}  // namespace wattweek::cli
