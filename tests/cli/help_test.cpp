#include "cli/help.hpp"

#include <sstream>

#include "program.hpp"
#include "wattweek/version.hpp"

namespace wattweek::cli {
namespace {

void check_width(const std::string& text) {
  std::istringstream lines(text);
  for (std::string line; std::getline(lines, line);) {
    CAPTURE(line);
    CHECK(line.size() <= 80);
  }
}

TEST_CASE("help: the overview lists every command and fits 80 columns") {
  const Run run = wattweek("help");
  CHECK(run.exit_code == 0);
  CHECK(run.err == "");
  for (const Command& command : commands()) {
    CHECK(run.out.find("\n  " + std::string(command.name) + " ") != std::string::npos);
  }
  check_width(run.out);
  CHECK(wattweek("--help").out == run.out);
  CHECK(wattweek("-h").out == run.out);
}

TEST_CASE("help: every command has its page, the same by either way, within 80 columns") {
  for (const Command& command : commands()) {
    const std::string name(command.name);
    CAPTURE(name);
    const Run run = wattweek("help " + name);
    CHECK(run.exit_code == 0);
    CHECK(run.err == "");
    CHECK(run.out.find("Usage: wattweek " + name) == 0);
    CHECK(run.out.find("\nExample:\n  wattweek " + name) != std::string::npos);
    check_width(run.out);
    CHECK(wattweek(name + " --help").out == run.out);
  }
}

TEST_CASE("help: the example of every command runs as it stands, beside the shipped files") {
  for (const Command& command : commands()) {
    CAPTURE(command.example);
    const TemporaryFolder folder;  // An example may write files of its own.
    for (const char* name : {"docs", "profiles", "tariffs"}) {
      std::filesystem::create_directory_symlink(std::filesystem::path(WATTWEEK_SOURCE_DIR) / name,
                                                folder.path() / name);
    }
    const Run run = shell(folder.path(), std::string(command.example));
    CHECK(run.exit_code == 0);
    // What `fit` finds about a log is said there.
    const bool says_findings = command.name == "fit";
    CHECK((run.err == "" || says_findings));
    CHECK(run.out != "");
  }
}

TEST_CASE("help: the page of compare") {
  CHECK(wattweek("help compare").out ==
        "Usage: wattweek compare STUDY.toml [--format FORMAT] [--baseline ID] [--years N]\n"
        "       [--month YYYY-MM] [--tariff TARIFF.toml]... [--payback-within N] [--draws\n"
        "       N] [--seed S] [--threads N]\n"
        "\n"
        "Reckons what `estimate` does, and what each candidate saves against the\n"
        "baseline: energy and money a year, and over a horizon of years whether its\n"
        "purchase pays.\n"
        "\n"
        "Options:\n"
        "  --format FORMAT       text (default), json, csv or markdown\n"
        "  --baseline ID         the candidate that the others are compared with, in\n"
        "                        place of the study's\n"
        "  --years N             look ahead over N years, 1 to 30, in place of\n"
        "                        finance.years in the study; without [finance] the\n"
        "                        discount rate and the price rise are 0\n"
        "  --month YYYY-MM       only the household's bill of this month, line by line,\n"
        "                        without and with each candidate\n"
        "  --tariff TARIFF.toml  this contract in place of the study's own, or\n"
        "                        shipped:NAME; given several times, the candidates under\n"
        "                        each of them side by side\n"
        "  --payback-within N    what each candidate may cost to buy to have paid back\n"
        "                        within N years, 1 to 30\n"
        "  --draws N             draw every range of the files N times, 100 to 10000000,\n"
        "                        and say how far the results can be trusted; text says so\n"
        "                        with a few draws even if not asked\n"
        "  --seed S              draw other numbers: 0 to 2147483647, 1 if not given;\n"
        "                        with --draws\n"
        "  --threads N           use N threads, 1 to 256, in place of one for each core;\n"
        "                        the results are the same\n"
        "\n"
        "Example:\n"
        "  wattweek compare docs/examples/ostrawick.toml --years 8\n");
}

TEST_CASE("help: about a command that does not exist is refused") {
  const Run run = wattweek("help chekc");
  CHECK(run.exit_code == 2);
  CHECK(run.out == "");
  CHECK(run.err ==
        "wattweek: error: unknown command 'chekc'; did you mean 'check'? Accepted are estimate, "
        "compare, whatif, report, fit, check, quick, new, help, --help, --version\n");
  CHECK(wattweek("help check quick").err ==
        "wattweek: error: help: 'quick' is one word too many\n");
}

TEST_CASE("help: the version is the library's") {
  const Run run = wattweek("--version");
  CHECK(run.exit_code == 0);
  CHECK(run.out == "wattweek " + std::string(kVersion) + "\n");
  CHECK(wattweek("--version --help").err ==
        "wattweek: error: '--help' is one word too many after --version\n");
}

}  // namespace
}  // namespace wattweek::cli
