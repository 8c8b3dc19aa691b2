#include "cli/man_page.hpp"

#include <fmt/format.h>

#include "cli/outcome.hpp"
#include "cli/placeholder.hpp"
#include "wattweek/version.hpp"

namespace wattweek::cli {
namespace {

std::string bold(std::string_view text) { return "\\fB" + roff(text) + "\\fR"; }

std::string italic(std::string_view text) { return "\\fI" + roff(text) + "\\fR"; }

/// Only the name itself is italic in `[COMMAND]` and `FILE.toml...`.
std::string operand(std::string_view placeholder) {
  const std::string_view name = bare(placeholder);
  const std::size_t at = placeholder.find(name);
  return roff(placeholder.substr(0, at)) + italic(name) +
         roff(placeholder.substr(at + name.size())) + "\\&";  // The dots end no sentence.
}

std::string with_value(const Option& option) {
  const std::string name = bold(dashed(option));
  return option.value.empty() ? name : name + "\\~" + italic(option.value);
}

/// `-o, --output FILE`
std::string term(const Option& option) {
  const std::string letter = dashed_letter(option);
  return (letter.empty() ? "" : bold(letter) + ", ") + with_value(option);
}

std::string section(std::string_view name) { return fmt::format(".SH {}\n", name); }

std::string paragraph(std::string_view text) { return fmt::format(".PP\n{}\n", roff(text)); }

/// A term, ready made, and below it what it means.
std::string entry(const std::string& term, std::string_view text) {
  return fmt::format(".TP\n{}\n{}\n", term, roff(text));
}

std::string synopsis(const std::vector<Command>& table) {
  std::string text = section("SYNOPSIS");
  for (const Command& command : table) {
    text += ".SY wattweek\n" + bold(command.name);
    if (!command.operands.empty()) text += ' ' + operand(command.operands);
    for (const Option& option : command.options) {
      text += '\n' + (option.required ? with_value(option) : '[' + with_value(option) + ']');
      if (option.repeats) text += "...\\&";  // The dots end no sentence.
    }
    text += "\n.YS\n";
  }
  return text + fmt::format(".SY wattweek\n{} | {}\n.YS\n", with_value(kHelpOption),
                            with_value(kVersionOption));
}

std::string description() {
  return section("DESCRIPTION") +
         paragraph(
             "wattweek takes watts read from a wall meter, the week as a home lives it, and an "
             "electricity contract as it is written. From these it reckons the energy of a year, "
             "what that adds to the bill, and which of several set-ups is the cheapest once what "
             "they cost to buy counts too.") +
         paragraph(
             "A study is a TOML file that describes all this; it can name other files with the "
             "profile of a device or with a tariff. Results go to standard output, everything "
             "else to standard error.");
}

std::string commands_section(const std::vector<Command>& table) {
  std::string text = section("COMMANDS");
  for (const Command& command : table) {
    text += fmt::format(".SS {}{}{}\n", roff(command.name), command.operands.empty() ? "" : " ",
                        roff(command.operands));
    text += roff(command.description) + '\n';
    for (const Option& option : command.options) text += entry(term(option), option.help);
  }
  return text + section("OPTIONS") + entry(term(kHelpOption), kHelpOption.help) +
         entry(with_value(kVersionOption), kVersionOption.help);
}

std::string exit_status() {
  std::string text = section("EXIT STATUS");
  for (const ExitCode& each : kExitCodes)
    text += entry(bold(std::to_string(each.code)), each.meaning);
  return text +
         paragraph(fmt::format("With {} nothing is printed on standard output.", kWrongInput));
}

std::string surroundings() {
  return section("ENVIRONMENT") +
         entry(bold("NO_COLOR"), "if set and not empty: no bold headings on a terminal") +
         entry(bold("TERM"), "dumb: likewise") +
         entry(bold("TZ"), "the time zone that `new` writes where --zone is not given") +
         entry(bold("TZDIR"),
               "the folder of the time zone database, in place of /usr/share/zoneinfo") +
         paragraph("The locale changes nothing. A study names its own time zone.") +
         section("FILES") +
         entry("\\fI../share/wattweek/profiles/\\fR, \\fI../share/wattweek/tariffs/\\fR",
               "the profiles and tariffs that ship with the program, seen from the folder in "
               "which it lies; `shipped:NAME` in a study is NAME.toml there");
}

std::string examples(const std::vector<Command>& table) {
  std::string text = section("EXAMPLES") + paragraph("The paths are those of the source tree.");
  for (const Command& command : table) {
    text += fmt::format(".TP\n{}\n{}\n", roff(command.summary), bold(command.example));
  }
  return text;
}

std::string see_also() {
  return section("SEE ALSO") +
         paragraph(
             "In the source tree: docs/files.md (every key of a study, a profile and a tariff), "
             "docs/method.md (every rule of reckoning), docs/json.md (the JSON for other "
             "programs), docs/safety.md (before you measure).");
}

/// What stands for a character that roff would take for a command or print as another one.
std::string_view stand_in(char c) {
  switch (c) {
    case '\\':
      return "\\(rs";
    case '-':
      return "\\-";
    case '\'':
      return "\\(aq";
    case '`':
      return "\\(ga";
    case '"':
      return "\\(dq";
    case '^':
      return "\\(ha";
    case '~':
      return "\\(ti";
    default:
      return "";
  }
}

}  // namespace

std::string roff(std::string_view text) {
  std::string out;
  bool is_bold = false;
  if (text.starts_with('.')) out = "\\&";
  for (std::size_t i = 0; i < text.size(); ++i) {
    const bool has_partner = is_bold || text.find('`', i + 1) != std::string_view::npos;
    if (text[i] == '`' && has_partner) {
      is_bold = !is_bold;
      out += is_bold ? "\\fB" : "\\fR";
      continue;
    }
    const std::string_view other = stand_in(text[i]);
    out += other.empty() ? std::string(1, text[i]) : std::string(other);
  }
  return out;
}

std::string man_page(const std::vector<Command>& table) {
  return fmt::format(".TH WATTWEEK 1 \"\" \"wattweek {}\" \"User Commands\"\n", kVersion) +
         section("NAME") + fmt::format("wattweek \\- {}\n", roff(kPurpose)) + synopsis(table) +
         description() + commands_section(table) + exit_status() + surroundings() +
         examples(table) + see_also();
}

}  // namespace wattweek::cli
