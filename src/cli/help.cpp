#include "cli/help.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "cli/outcome.hpp"
#include "wattweek/report/wrap.hpp"

namespace wattweek::cli {
namespace {

constexpr std::size_t kColumns = 80;

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
    widest = std::max(widest, with_value(option).size());
  }
  if (!command.options.empty()) text += "\nOptions:\n";
  for (const Option& option : command.options) {
    text += report::hanging(fmt::format("  {:<{}}  ", with_value(option), widest), option.help,
                            kColumns);
  }
  return text + fmt::format("\nExample:\n  {}\n", command.example);
}

}  // namespace wattweek::cli
