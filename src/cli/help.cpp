#include "cli/help.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace wattweek::cli {
namespace {

constexpr std::size_t kColumns = 80;

/// `first`, then `text` broken at blanks; further lines are indented to stand below the text.
std::string hanging(const std::string& first, std::string_view text) {
  std::string out;
  std::string line = first;
  bool empty = true;
  while (!text.empty()) {
    const std::size_t end = std::min(text.find(' '), text.size());
    if (!empty && line.size() + 1 + end > kColumns) {
      out += line + '\n';
      line = std::string(first.size(), ' ');
      empty = true;
    }
    line += (empty ? "" : " ") + std::string(text.substr(0, end));
    empty = false;
    text.remove_prefix(std::min(end + 1, text.size()));
  }
  return out + line + '\n';
}

std::string with_value(const Option& option) {
  const std::string dashed = "--" + std::string(option.name);
  return option.value.empty() ? dashed : fmt::format("{} {}", dashed, option.value);
}

}  // namespace

std::string usage(const Command& command) {
  std::string text = fmt::format("wattweek {}", command.name);
  if (!command.operands.empty()) text += fmt::format(" {}", command.operands);
  for (const Option& option : command.options) {
    const std::string shown = with_value(option);
    text += option.required ? " " + shown : " [" + shown + "]";
  }
  return text;
}

std::string overview_help() {
  std::string text =
      "wattweek: what an always-on machine at home will cost\n\n"
      "Usage: wattweek COMMAND ...\n"
      "       wattweek --help | --version\n\n"
      "Commands:\n";
  for (const Command& command : commands()) {
    text += hanging(fmt::format("  {:<10}", command.name), command.summary);
  }
  text +=
      "\n`wattweek help COMMAND` explains a command and gives an example.\n\n"
      "Exit codes: 0 done, 2 the command line or an input file is wrong, 1 all else.\n";
  return text;
}

std::string command_help(const Command& command) {
  std::string text = hanging("Usage: ", usage(command));
  text += '\n' + hanging("", command.description);
  std::size_t widest = 0;
  for (const Option& option : command.options) {
    widest = std::max(widest, with_value(option).size());
  }
  if (!command.options.empty()) text += "\nOptions:\n";
  for (const Option& option : command.options) {
    text += hanging(fmt::format("  {:<{}}  ", with_value(option), widest), option.help);
  }
  return text + fmt::format("\nExample:\n  {}\n", command.example);
}

}  // namespace wattweek::cli
