#include "cli/help.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "cli/outcome.hpp"
#include "wattweek/report/wrap.hpp"

namespace wattweek::cli {
namespace {

constexpr std::size_t kColumns = 80;

std::string with_value(const Option& option) {
  return option.value.empty() ? dashed(option) : fmt::format("{} {}", dashed(option), option.value);
}

/// `-o, --output FILE`; without a letter as far to the right, where others of the command have one.
std::string term(const Command& command, const Option& option) {
  const bool has_letters = std::any_of(command.options.begin(), command.options.end(),
                                       [](const Option& each) { return each.letter != '\0'; });
  if (!has_letters) return with_value(option);
  const std::string letter = dashed_letter(option);
  return (letter.empty() ? "    " : letter + ", ") + with_value(option);
}

}  // namespace

std::string usage(const Command& command) {
  std::string text = fmt::format("wattweek {}", command.name);
  if (!command.operands.empty()) text += fmt::format(" {}", command.operands);
  for (const Option& option : command.options) {
    const std::string shown = with_value(option);
    text += option.required ? " " + shown : " [" + shown + "]";
    if (option.repeats) text += "...";
  }
  return text;
}

std::string overview_help() {
  std::string text = fmt::format("wattweek: {}\n\n", kPurpose) +
                     "Usage: wattweek COMMAND ...\n"
                     "       wattweek --help | --version\n\n"
                     "Commands:\n";
  for (const Command& command : commands()) {
    text += report::hanging(fmt::format("  {:<10}", command.name), command.summary, kColumns);
  }
  text += "\n`wattweek help COMMAND` explains a command and gives an example.\n\n";
  std::string codes;
  for (const ExitCode& each : kExitCodes) {
    codes += fmt::format("{}{} {}", codes.empty() ? "" : ", ", each.code, each.meaning);
  }
  return text + report::hanging("Exit codes: ", codes + '.', kColumns);
}

std::string command_help(const Command& command) {
  std::string text = report::hanging("Usage: ", usage(command), kColumns);
  text += '\n' + report::hanging("", command.description, kColumns);
  std::size_t widest = 0;
  for (const Option& option : command.options) {
    widest = std::max(widest, term(command, option).size());
  }
  if (!command.options.empty()) text += "\nOptions:\n";
  for (const Option& option : command.options) {
    text += report::hanging(fmt::format("  {:<{}}  ", term(command, option), widest), option.help,
                            kColumns);
  }
  return text + fmt::format("\nExample:\n  {}\n", command.example);
}

}  // namespace wattweek::cli
