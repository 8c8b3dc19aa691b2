// The pages hold the whole table, and the generator writes them whole.

#include <sstream>

#include "cli/completions.hpp"
#include "cli/man_page.hpp"
#include "cli/outcome.hpp"
#include "hostile_table.hpp"
#include "program.hpp"
#include "wattweek/version.hpp"

namespace wattweek::cli {
namespace {

namespace fs = std::filesystem;

/// From the last `opening` to the next `closing`, both included; empty where there is none.
std::string part(const std::string& page, const std::string& opening, const std::string& closing) {
  const std::size_t begin = page.rfind(opening);
  if (begin == std::string::npos) return "";
  const std::size_t end = page.find(closing, begin + opening.size());
  return page.substr(begin, end == std::string::npos ? end : end + closing.size() - begin);
}

bool holds(const std::string& text, const std::string& what) {
  return text.find(what) != std::string::npos;
}

std::string lines_with(const std::string& page, const std::string& what) {
  std::istringstream lines(page);
  std::string found;
  for (std::string line; std::getline(lines, line);) found += holds(line, what) ? line + '\n' : "";
  return found;
}

TEST_CASE("pages: every command and each of its options is in the man page") {
  const std::string page = man_page();
  const std::string synopsis = part(page, "\n.SH SYNOPSIS", "\n.SH");
  const std::string examples = part(page, "\n.SH EXAMPLES", "\n.SH");
  for (const Command& command : commands()) {
    CAPTURE(command.name);
    const std::string own = part(page, "\n.SS " + roff(command.name), "\n.S");
    CHECK(holds(synopsis, "\n\\fB" + roff(command.name) + "\\fR"));
    CHECK(holds(own, '\n' + roff(command.description) + '\n'));
    CHECK(holds(examples, "\n\\fB" + roff(command.example) + "\\fR\n"));
    for (const Option& option : command.options) {
      CAPTURE(option.name);
      const std::string dashed = "\\fB\\-\\-" + roff(option.name) + "\\fR";
      const std::string letter =
          option.letter == '\0' ? "" : std::string("\\fB\\-") + option.letter + "\\fR, ";
      CHECK(holds(own, "\n.TP\n" + letter + dashed));
      CHECK(holds(own, '\n' + roff(option.help) + '\n'));
      const std::string in_synopsis = part(synopsis, "\n\\fB" + roff(command.name), "\n.YS");
      const std::string repeated = part(in_synopsis, '[' + dashed, "\n");
      CHECK(holds(repeated, "]...") == (option.repeats && !option.required));
    }
  }
}

TEST_CASE("pages: every command and each of its options is in the completions of each shell") {
  const std::string bash = bash_completion();
  const std::string zsh = zsh_completion();
  const std::string fish = fish_completion();
  for (const Command& command : commands()) {
    const std::string name(command.name);
    CAPTURE(name);
    const std::string in_bash = part(bash, "\n    " + name + ")\n", ";;") + ' ';
    const std::string in_zsh = part(zsh, "\n    " + name + ")\n", ";;");
    const std::string in_fish = lines_with(fish, "'__wattweek_command_is " + name + "'");
    for (const Option& option : command.options) {
      CAPTURE(option.name);
      const std::string dashed = "--" + std::string(option.name);
      CHECK(holds(in_bash, ' ' + dashed + ' '));
      const std::string letter(option.letter == '\0' ? 0U : 1U, option.letter);
      const std::string alone = "(-" + letter + ' ' + dashed + ')';
      const std::string quote = option.repeats ? "'*" : (letter.empty() ? "'" : "'" + alone);
      CHECK(holds(in_zsh, quote + dashed + (option.value.empty() ? "[" : "=[")));
      if (!letter.empty()) {
        CHECK(holds(in_bash, " -" + letter + ' '));
        CHECK(holds(in_zsh, quote + '-' + letter + (option.value.empty() ? "[" : "+[")));
        CHECK(holds(in_fish, " -s " + letter + " -l " + std::string(option.name) + ' '));
      }
      CHECK(holds(in_fish, " -l " + std::string(option.name) + ' '));
    }
    CHECK(holds(in_bash, " --help"));
    CHECK(holds(in_zsh, "--help["));
    CHECK(holds(in_fish, " -l help "));
  }
}

TEST_CASE("pages: the man page tells the version, every exit code and every section in its order") {
  const std::string page = man_page();
  const std::string title = ".TH WATTWEEK 1 \"\" \"wattweek " + std::string(kVersion) +
                            "\" \"User Commands\"\n.SH NAME\n";
  CHECK(page.substr(0, title.size()) == title);
  std::size_t at = 0;
  for (const char* name : {"NAME", "SYNOPSIS", "DESCRIPTION", "COMMANDS", "OPTIONS", "EXIT STATUS",
                           "ENVIRONMENT", "FILES", "EXAMPLES", "SEE ALSO"}) {
    CAPTURE(name);
    at = page.find("\n.SH " + std::string(name) + "\n", at);
    REQUIRE(at != std::string::npos);
  }
  for (const ExitCode& each : kExitCodes) {
    CHECK(holds(page,
                "\n.TP\n\\fB" + std::to_string(each.code) + "\\fR\n" + roff(each.meaning) + '\n'));
  }
}

TEST_CASE("pages: roff takes no character of a text for a command") {
  CHECK(roff(".so it's \\n(x \"--y\"") == "\\&.so it\\(aqs \\(rsn(x \\(dq\\-\\-y\\(dq");
  CHECK(roff("'tis") == "\\(aqtis");
  CHECK(roff("^ and ~") == "\\(ha and \\(ti");
  CHECK(roff("see `new --list`, then `") == "see \\fBnew \\-\\-list\\fR, then \\(ga");
}

TEST_CASE("pages: a hostile text is printed on the man page as it is written, without a warning") {
  const TemporaryFolder folder;
  folder.write("page.1", man_page(hostile_table()));
  const Run run = shell(folder.path(), "groff -man -ww -Tascii -P-cbou -rLL=200n page.1");
  CHECK(run.exit_code == 0);
  CHECK(run.err == "");
  std::string text(kHostile);
  for (const char* mark : {"`", "`"}) text.erase(text.find(mark), 1);  // Its words are bold.
  CHECK(holds(run.out, "\n              " + text + '\n'));
  CHECK(holds(run.out, "\n       .dots first\n"));
}

TEST_CASE("pages: the generator writes each page whole, below the folder that is named") {
  const TemporaryFolder folder;
  const Run run = shell(folder.path(), WATTWEEK_PAGES " deep/share && find deep -type f | sort");
  CHECK(run.exit_code == 0);
  CHECK(run.err == "");
  CHECK(run.out ==
        "deep/share/bash-completion/completions/wattweek\n"
        "deep/share/fish/vendor_completions.d/wattweek.fish\n"
        "deep/share/man/man1/wattweek.1\n"
        "deep/share/zsh/site-functions/_wattweek\n");
  const fs::path share = folder.path() / "deep/share";
  CHECK(text_of(share / "man/man1/wattweek.1") == man_page());
  CHECK(text_of(share / "bash-completion/completions/wattweek") == bash_completion());
  CHECK(text_of(share / "zsh/site-functions/_wattweek") == zsh_completion());
  CHECK(text_of(share / "fish/vendor_completions.d/wattweek.fish") == fish_completion());
}

TEST_CASE("pages: the generator says why it cannot write, and writes nothing without a folder") {
  const TemporaryFolder folder;
  folder.write("file", "");
  const Run run = shell(folder.path(), WATTWEEK_PAGES " file");
  CHECK(run.exit_code == 1);
  CHECK(run.err.find("wattweek_pages: error: ") == 0);
  CHECK(holds(run.err, "file/man/man1"));
  CHECK(shell(folder.path(), WATTWEEK_PAGES).exit_code == 2);
  CHECK(shell(folder.path(), WATTWEEK_PAGES).err == "usage: wattweek_pages FOLDER\n");
}

}  // namespace
}  // namespace wattweek::cli
