// The one file that knows the library for command lines.

#include "cli/arguments.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <boost/program_options.hpp>
#include <charconv>
#include <cmath>

#include "cli/outcome.hpp"

namespace wattweek::cli {
namespace {

namespace po = boost::program_options;

/// As the library wants it: `output,o`.
std::string declared(const Option& option) {
  const std::string name(option.name);
  return option.letter == '\0' ? name : name + ',' + option.letter;
}

po::options_description described(const Command& command) {
  po::options_description all;
  auto add = all.add_options();
  for (const Option& option : command.options) {
    const bool is_switch = option.value.empty();
    const po::value_semantic* semantic =
        is_switch ? static_cast<po::value_semantic*>(new po::untyped_value(true))
                  : static_cast<po::value_semantic*>(po::value<std::string>());
    add(declared(option).c_str(), semantic, "");
  }
  add(declared(kHelpOption).c_str(), "");
  return all;
}

Misuse unknown_option(const Command& command, const std::string& found) {
  std::vector<std::string> words;
  for (const Option& option : command.options) words.push_back(dashed(option));
  words.push_back(dashed(kHelpOption));
  const std::vector<std::string_view> accepted(words.begin(), words.end());
  return {
      fmt::format("{}: unknown option '{}'{}", command.name, found, suggestion(found, accepted))};
}

Misuse missing_value(const Command& command, const Option& option) {
  return {fmt::format("{}: --{} needs a value, {}: {}", command.name, option.name, option.value,
                      option.help)};
}

/// The command's option of this name or letter; null where there is none.
const Option* option_named(const Command& command, std::string_view name) {
  for (const Option& option : command.options) {
    if (option.name == name || (name.size() == 1 && option.letter == name[0])) return &option;
  }
  return nullptr;
}

Misuse wrong_syntax(const Command& command, const po::invalid_command_line_syntax& error) {
  using Syntax = po::invalid_command_line_syntax;
  std::string name = error.get_option_name();
  name.erase(0, name.find_first_not_of('-'));
  const bool lacks_value =
      error.kind() == Syntax::missing_parameter || error.kind() == Syntax::empty_adjacent_parameter;
  const Option* option = option_named(command, name);
  if (option != nullptr && lacks_value) return missing_value(command, *option);
  if (error.kind() == Syntax::extra_parameter) {
    return {fmt::format("{}: --{} takes no value", command.name, name)};
  }
  return {fmt::format("{}: {}", command.name, error.what())};
}

/// Has an option swallowed the next one as its value?
bool is_option(const Command& command, std::string_view value) {
  return std::any_of(command.options.begin(), command.options.end(), [value](const Option& option) {
    return value == dashed(option) || (!value.empty() && value == dashed_letter(option));
  });
}

std::variant<Arguments, Misuse> sorted(const Command& command,
                                       const std::vector<po::option>& options) {
  Arguments arguments;
  for (const po::option& option : options) {
    if (option.position_key >= 0) {
      arguments.operands.insert(arguments.operands.end(), option.value.begin(), option.value.end());
      continue;
    }
    std::string key = option.string_key;
    if (key == kHelpOption.name) {
      arguments.wants_help = true;
      continue;
    }
    const std::string value = option.value.empty() ? "" : option.value.front();
    const Option& known = *option_named(command, key);
    if (is_option(command, value)) return missing_value(command, known);
    std::vector<std::string>& given = arguments.values[key];
    if (!given.empty() && !known.repeats) {
      return Misuse{fmt::format("{}: --{} is given twice", command.name, key)};
    }
    given.push_back(value);
  }
  return arguments;
}

std::optional<Misuse> operand_problem(const Command& command, const Arguments& arguments) {
  const auto count = static_cast<int>(arguments.operands.size());
  if (count < command.least_operands) {
    return Misuse{fmt::format("{}: {} is missing", command.name, command.operands)};
  }
  if (count > command.most_operands) {
    return Misuse{fmt::format("{}: '{}' is one word too many", command.name,
                              arguments.operands[static_cast<std::size_t>(command.most_operands)])};
  }
  for (const Option& option : command.options) {
    if (!option.required || arguments.has(option.name)) continue;
    return Misuse{fmt::format("{}: --{} {} is missing: {}", command.name, option.name, option.value,
                              option.help)};
  }
  return std::nullopt;
}

Misuse no_number(std::string_view option, const std::string& text, std::string_view accepted) {
  std::string message = fmt::format("--{}: found '{}', accepted is {}", option, text, accepted);
  if (text.find(',') != std::string::npos) message += ", with a decimal point";
  return {message};
}

}  // namespace

std::optional<std::string> Arguments::value(std::string_view option) const {
  const auto found = values.find(option);
  return found == values.end() ? std::nullopt : std::optional(found->second.front());
}

std::vector<std::string> Arguments::list(std::string_view option) const {
  const auto found = values.find(option);
  return found == values.end() ? std::vector<std::string>() : found->second;
}

std::variant<Arguments, Misuse> parse(const Command& command,
                                      const std::vector<std::string>& words) {
  const po::options_description options = described(command);
  po::positional_options_description operands;
  operands.add("operands", -1);
  const int style = po::command_line_style::unix_style & ~po::command_line_style::allow_guessing;
  try {
    const po::parsed_options parsed =
        po::command_line_parser(words).options(options).positional(operands).style(style).run();
    std::variant<Arguments, Misuse> result = sorted(command, parsed.options);
    const auto* arguments = std::get_if<Arguments>(&result);
    if (arguments == nullptr || arguments->wants_help) return result;
    if (std::optional<Misuse> problem = operand_problem(command, *arguments)) return *problem;
    return result;
  } catch (const po::unknown_option& error) {
    return unknown_option(command, error.get_option_name());
  } catch (const po::invalid_command_line_syntax& error) {
    return wrong_syntax(command, error);
  } catch (const po::error& error) {
    return Misuse{fmt::format("{}: {}", command.name, error.what())};
  }
}

std::variant<double, Misuse> number(std::string_view option, const std::string& text,
                                    const Limits& limits) {
  double value = 0;
  const char* end = text.data() + text.size();
  const auto [rest, problem] = std::from_chars(text.data(), end, value);
  const bool is_number = problem == std::errc() && rest == end && std::isfinite(value);
  if (!is_number || value < limits.least || value > limits.most) {
    return no_number(option, text, limits.meaning);
  }
  return value;
}

std::variant<int, Misuse> whole_number(std::string_view option, const std::string& text, int least,
                                       int most) {
  int value = 0;
  const char* end = text.data() + text.size();
  const auto [rest, problem] = std::from_chars(text.data(), end, value);
  if (problem != std::errc() || rest != end || value < least || value > most) {
    return Misuse{fmt::format("--{}: found '{}', accepted is a whole number from {} to {}", option,
                              text, least, most)};
  }
  return value;
}

std::variant<std::string, Misuse> format_of(const Command& command, const Arguments& arguments) {
  const std::string chosen = arguments.value("format").value_or(std::string(command.formats[0]));
  const auto& known = command.formats;
  if (std::find(known.begin(), known.end(), chosen) != known.end()) return chosen;
  return Misuse{fmt::format("--format: unknown format '{}'{}", chosen, suggestion(chosen, known))};
}

}  // namespace wattweek::cli
