#include "cli/run.hpp"

#include <fmt/format.h>

#include "cli/help.hpp"
#include "wattweek/version.hpp"

namespace wattweek::cli {
namespace {

bool is_help(const std::string& word) { return word == "--help" || word == "-h"; }

Outcome unknown_command(const std::string& word) {
  const std::string what = word.compare(0, 1, "-") == 0 ? "option" : "command";
  std::vector<std::string_view> accepted = command_names();
  accepted.insert(accepted.end(), {"--help", "--version"});
  return refused(fmt::format("unknown {} '{}'{}", what, word, suggestion(word, accepted)));
}

Outcome help(const Arguments& arguments) {
  if (arguments.operands.empty()) return {kDone, overview_help()};
  const Command* command = command_named(arguments.operands.front());
  return command == nullptr ? unknown_command(arguments.operands.front())
                            : Outcome{kDone, command_help(*command)};
}

Outcome run_command(const Command& command, const Arguments& arguments,
                    const report::Style& style) {
  if (command.name == "estimate") return run_estimate(arguments, style);
  if (command.name == "compare") return run_compare(arguments, style);
  if (command.name == "whatif") return run_what_if(arguments, style);
  if (command.name == "report") return run_report(arguments);
  if (command.name == "fit") return run_fit(arguments, style);
  if (command.name == "check") return run_check(arguments, style);
  if (command.name == "quick") return run_quick(arguments, style);
  if (command.name == "new") return run_new(arguments, style.columns);
  return help(arguments);
}

}  // namespace

Outcome run(const std::vector<std::string>& words, const report::Style& style) {
  if (words.empty()) {
    return refused("no command" + suggestion("", command_names()) + "; try `wattweek help`");
  }
  const std::string& first = words.front();
  const bool alone = first == "--version" || is_help(first);
  if (alone && words.size() > 1) {
    return refused(fmt::format("'{}' is one word too many after {}", words[1], first));
  }
  if (is_help(first)) return {kDone, overview_help()};
  if (first == "--version") return {kDone, fmt::format("wattweek {}\n", kVersion)};
  const Command* command = command_named(first);
  if (command == nullptr) return unknown_command(first);
  const auto parsed = parse(*command, {words.begin() + 1, words.end()});
  if (const auto* misuse = std::get_if<Misuse>(&parsed)) return refused(misuse->message);
  const auto& arguments = std::get<Arguments>(parsed);
  if (arguments.wants_help) return {kDone, command_help(*command)};
  return run_command(*command, arguments, style);
}

}  // namespace wattweek::cli
