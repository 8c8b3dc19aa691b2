#include "cli/arguments.hpp"

#include "program.hpp"

namespace wattweek::cli {
namespace {

using Words = std::vector<std::string>;

Arguments parsed(const char* command, const Words& words) {
  const auto result = parse(*command_named(command), words);
  REQUIRE(std::holds_alternative<Arguments>(result));
  return std::get<Arguments>(result);
}

std::string misuse(const char* command, const Words& words) {
  const auto result = parse(*command_named(command), words);
  const auto* found = std::get_if<Misuse>(&result);
  return found == nullptr ? "(accepted)" : found->message;
}

double number_of(const std::string& text) {
  const auto result = number("price", text, {-1e9, 1e9, "a price"});
  REQUIRE(std::holds_alternative<double>(result));
  return std::get<double>(result);
}

std::string no_number(const std::string& text) {
  const auto result = number("idle", text, {0, 100, "a number of watts, 0 to 100"});
  const auto* found = std::get_if<Misuse>(&result);
  return found == nullptr ? "(accepted)" : found->message;
}

TEST_CASE("arguments: options and files may stand in any order") {
  for (const Words& words : {Words{"a.toml", "--format", "json", "--years", "3"},
                             Words{"--years=3", "a.toml", "--format=json"}}) {
    const Arguments arguments = parsed("compare", words);
    CHECK(arguments.operands == Words{"a.toml"});
    CHECK(arguments.value("format") == "json");
    CHECK(arguments.value("years") == "3");
    CHECK_FALSE(arguments.has("baseline"));
  }
}

TEST_CASE("arguments: after two dashes everything is a file") {
  CHECK(parsed("check", {"--strict", "--", "--format", "-x"}).operands == Words{"--format", "-x"});
}

TEST_CASE("arguments: a value may begin with a minus") {
  CHECK(parsed("quick", {"--idle", "5", "--price", "-0.02"}).value("price") == "-0.02");
}

TEST_CASE("arguments: help is wanted wherever it stands and whatever else is missing") {
  CHECK(parsed("compare", {"--help"}).wants_help);
  CHECK(parsed("quick", {"--idle", "5", "-h"}).wants_help);
}

TEST_CASE("arguments: an unknown option names what was found, the nearest and what is accepted") {
  CHECK(misuse("compare", {"a.toml", "--basline", "x"}) ==
        "compare: unknown option '--basline'; did you mean '--baseline'? Accepted are --format, "
        "--baseline, --years, --month, --tariff, --payback-within, --draws, --seed, --threads, "
        "--help");
  CHECK(misuse("check", {"a.toml", "--quiet"}) ==
        "check: unknown option '--quiet'; accepted are --strict, --help");
  CHECK(misuse("check", {"a.toml", "-x"}) ==
        "check: unknown option '-x'; accepted are --strict, --help");
}

TEST_CASE("arguments: an option is never guessed from its beginning") {
  CHECK(misuse("check", {"a.toml", "--stri"}) ==
        "check: unknown option '--stri'; did you mean '--strict'? Accepted are --strict, --help");
}

TEST_CASE("arguments: an option without its value says what the value is") {
  const std::string message =
      "compare: --format needs a value, FORMAT: text (default), json, csv or markdown";
  CHECK(misuse("compare", {"a.toml", "--format"}) == message);
  CHECK(misuse("compare", {"a.toml", "--format="}) == message);
  CHECK(misuse("compare", {"a.toml", "--format", "--years", "3"}) == message);
}

TEST_CASE("arguments: a short form is the option itself, its value beside it or behind it") {
  for (const Words& words : {Words{"a.toml", "-o", "r.html"}, Words{"-or.html", "a.toml"},
                             Words{"--output=r.html", "a.toml"}}) {
    const Arguments arguments = parsed("report", words);
    CHECK(arguments.value("output") == "r.html");
    CHECK(arguments.operands == Words{"a.toml"});
  }
  CHECK(parsed("report", {"a.toml", "-o", "-"}).value("output") == "-");
  CHECK(misuse("report", {"a.toml", "-o", "x", "--output", "y"}) ==
        "report: --output is given twice");
  CHECK(misuse("report", {"a.toml", "-x"}).find("report: unknown option '-x'; accepted are") == 0);
  CHECK(misuse("report", {"a.toml"}) ==
        "report: --output FILE is missing: the file to write; - is standard output");
}

TEST_CASE("arguments: a short form without its value says what the value is") {
  const std::string message =
      "report: --output needs a value, FILE: the file to write; - is standard output";
  CHECK(misuse("report", {"a.toml", "-o"}) == message);
  CHECK(misuse("report", {"a.toml", "-o", "--force"}) == message);
  CHECK(misuse("report", {"a.toml", "--output", "-o", "r.html"}) == message);
  CHECK(misuse("report", {"a.toml", "--pictures", "-o", "r.html"})
            .find("report: --pictures needs a value, DIR: ") == 0);
}

TEST_CASE("arguments: a switch takes no value and nothing is given twice") {
  CHECK(misuse("check", {"a.toml", "--strict=yes"}) == "check: --strict takes no value");
  CHECK(misuse("check", {"a.toml", "--strict", "--strict"}) == "check: --strict is given twice");
  CHECK(misuse("compare", {"a.toml", "--years", "2", "--years=3"}) ==
        "compare: --years is given twice");
}

TEST_CASE("arguments: an option that repeats keeps all its values in the order given") {
  const Arguments arguments =
      parsed("compare", {"--tariff", "b.toml", "s.toml", "--tariff=a.toml", "--tariff", "b.toml"});
  CHECK(arguments.list("tariff") == Words{"b.toml", "a.toml", "b.toml"});
  CHECK(arguments.value("tariff") == "b.toml");
  CHECK(arguments.operands == Words{"s.toml"});
  CHECK(arguments.list("format").empty());
  CHECK(misuse("compare", {"s.toml", "--tariff", "a.toml", "--tariff", "--years", "3"}) ==
        "compare: --tariff needs a value, TARIFF.toml: this contract in place of the study's own, "
        "or shipped:NAME; given several times, the candidates under each of them side by side");
}

TEST_CASE("arguments: a missing or superfluous file and a missing option are named") {
  CHECK(misuse("estimate", {}) == "estimate: STUDY.toml is missing");
  CHECK(misuse("check", {"--strict"}) == "check: FILE.toml... is missing");
  CHECK(misuse("compare", {"a.toml", "b.toml"}) == "compare: 'b.toml' is one word too many");
  CHECK(misuse("quick", {"--idle", "5"}) == "quick: --price P is missing: price of a kWh");
}

TEST_CASE("arguments: numbers are read with a decimal point and whole") {
  CHECK(number_of("13.5") == 13.5);
  CHECK(number_of("-2e-3") == -0.002);
  CHECK(number_of("7") == 7);
}

TEST_CASE("arguments: what is no finite number in its limits is refused as it was typed") {
  const std::string accepted = ", accepted is a number of watts, 0 to 100";
  for (const char* text :
       {"abc", "", " 3", "3 ", "5W", "inf", "nan", "1e400", "0x10", "--3", "+5", "-1", "100.5"}) {
    CHECK(no_number(text) == "--idle: found '" + std::string(text) + "'" + accepted);
  }
  CHECK(no_number("1,5") == "--idle: found '1,5'" + accepted + ", with a decimal point");
}

TEST_CASE("arguments: a whole number is whole and in its limits") {
  CHECK(std::get<int>(whole_number("years", "30", 1, 30)) == 30);
  for (const char* text : {"0", "31", "2.5", "", "ten", "99999999999"}) {
    CHECK(std::get<Misuse>(whole_number("years", text, 1, 30)).message ==
          "--years: found '" + std::string(text) + "', accepted is a whole number from 1 to 30");
  }
}

TEST_CASE("arguments: an unknown format names the nearest and all that there are") {
  const Run run = wattweek("compare docs/examples/ostrawick.toml --format jsn");
  CHECK(run.exit_code == 2);
  CHECK(run.out == "");
  CHECK(run.err ==
        "wattweek: error: --format: unknown format 'jsn'; did you mean 'json'? Accepted are text, "
        "json, csv, markdown\n");
  CHECK(wattweek("quick --idle 5 --price 0.3 --format csv").err ==
        "wattweek: error: --format: unknown format 'csv'; accepted are text, json\n");
}

TEST_CASE("arguments: an unknown command names the nearest and all that there are") {
  const Run run = wattweek("comprae study.toml");
  CHECK(run.exit_code == 2);
  CHECK(run.out == "");
  CHECK(run.err ==
        "wattweek: error: unknown command 'comprae'; did you mean 'compare'? Accepted are "
        "estimate, compare, whatif, report, fit, check, quick, new, help, --help, --version\n");
  CHECK(wattweek("--verison").err ==
        "wattweek: error: unknown option '--verison'; did you mean '--version'? Accepted are "
        "estimate, compare, whatif, report, fit, check, quick, new, help, --help, --version\n");
}

TEST_CASE("arguments: without a command the program says which there are") {
  const Run run = wattweek("");
  CHECK(run.exit_code == 2);
  CHECK(run.out == "");
  CHECK(run.err ==
        "wattweek: error: no command; accepted are estimate, compare, whatif, report, fit, check, quick, "
        "new, "
        "help; try "
        "`wattweek help`\n");
}

TEST_CASE("arguments: a word on the command line cannot command the terminal") {
  const Run run = wattweek("$(printf '\\033[2J')");
  CHECK(run.err.find('\x1b') == std::string::npos);
  CHECK(run.err.find("unknown command '\\x1B[2J'") != std::string::npos);
}

}  // namespace
}  // namespace wattweek::cli
