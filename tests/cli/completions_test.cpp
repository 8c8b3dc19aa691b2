// The completions at work, each in its own shell.

#include "cli/completions.hpp"

#include <algorithm>

#include "hostile_table.hpp"
#include "program.hpp"

namespace wattweek::cli {
namespace {

/// A folder with files to choose from and the completions of a table.
class Desk {
 public:
  explicit Desk(const std::vector<Command>& table = commands()) {
    for (const char* name : {"a.toml", "b c.toml", "d.csv", "sub/e.toml"}) folder_.write(name, "");
    folder_.write(".cache/bash", bash_completion(table));
    folder_.write(".cache/_wattweek", zsh_completion(table));
    folder_.write(".cache/fish", fish_completion(table));
  }

  /// What bash offers, sorted, with `|` behind each; the words as bash takes the line apart.
  std::string bash(const std::vector<std::string>& words) const {
    std::string line = "COMP_WORDS=(";
    for (const std::string& word : words) line += "'" + word + "' ";
    const std::string cursor = words.back() == "=" ? "" : words.back();
    return shown(
        "source .cache/bash; " + line + "); COMP_CWORD=" + std::to_string(words.size() - 1) +
            "; _wattweek wattweek '" + cursor + "' x; printf \"%s|\\n\" \"${COMPREPLY[@]}\" | sort",
        "bash --norc -c ");
  }

  /// The same of fish, for a line up to the cursor, without the descriptions.
  std::string fish(const std::string& line) const {
    return shown(
        "source .cache/fish; complete -C \"" + line +
            "\" | string replace -r \"\\t.*\" \"\" | string replace -r \"\\$\" \"|\" | sort",
        "HOME=$PWD/.cache fish --no-config -c ");
  }

  /// Presses Tab in a zsh on a terminal of its own until `pattern` stands there; does it come?
  bool zsh(const std::string& line, const std::string& pattern) const {
    folder_.write(".cache/drive", R"(zmodload zsh/zpty
zpty inner 'TERM=dumb zsh -f -i'
zpty -w inner 'PROMPT=; fpath=($PWD/.cache $fpath); autoload -Uz compinit; compinit -u -D'
zpty -w inner 'stty columns 200; bindkey "^I" complete-word; print -r READ""Y'
zpty -r inner seen '*READY*'
zpty -w -n inner "$1"$'\t'
zpty -r inner seen "$2"
)");
    const Run run = shell(folder_.path(), "HOME=$PWD/.cache timeout 30 zsh -f .cache/drive '" +
                                              line + "' '" + pattern + "'");
    CAPTURE(run.err);
    CHECK(run.err == "");
    return run.exit_code == 0;
  }

  bool is_intact() const { return !std::filesystem::exists(folder_.path() / "pwned"); }

 private:
  std::string shown(const std::string& script, const std::string& interpreter) const {
    folder_.write(".cache/script", script);
    const Run run = shell(folder_.path(), interpreter + "\"$(cat .cache/script)\"");
    CHECK(run.exit_code == 0);
    CHECK(run.err == "");
    std::string text = run.out;
    text.erase(std::remove(text.begin(), text.end(), '\n'), text.end());
    return text;
  }

  TemporaryFolder folder_;
};

std::string listed(std::vector<std::string_view> words) {
  std::sort(words.begin(), words.end());
  std::string text;
  for (const std::string_view word : words) text += std::string(word) + '|';
  return text;
}

const std::vector<std::string_view>& formats_of_compare() {
  return command_named("compare")->formats;
}

TEST_CASE("completions: bash offers commands, options and the words that an option accepts") {
  const Desk desk;
  CHECK(desk.bash({"wattweek", ""}) == listed(command_names()));
  CHECK(desk.bash({"wattweek", "comp"}) == "compare|");
  CHECK(desk.bash({"wattweek", "--"}) == "--help|--version|");
  CHECK(desk.bash({"wattweek", "help", ""}) == listed(command_names()));
  CHECK(desk.bash({"wattweek", "compare", "--fo"}) == "--format|");
  CHECK(desk.bash({"wattweek", "compare", "a.toml", "--bas"}) == "--baseline|");
  CHECK(desk.bash({"wattweek", "compare", "--format", ""}) == listed(formats_of_compare()));
  CHECK(desk.bash({"wattweek", "quick", "--id"}) == "--idle|");
  CHECK(desk.bash({"wattweek", "quick", "--idle", ""}) == "|");
  CHECK(desk.bash({"wattweek", "nonsense", ""}) == "|");
}

TEST_CASE("completions: bash completes a value behind an equals sign, taken apart or not") {
  const Desk desk;
  CHECK(desk.bash({"wattweek", "compare", "--format", "="}) == listed(formats_of_compare()));
  CHECK(desk.bash({"wattweek", "compare", "--format", "=", "js"}) == "json|");
  CHECK(desk.bash({"wattweek", "compare", "--format=js"}) == "--format=json|");
}

TEST_CASE("completions: bash offers files of the right ending, and folders on the way to them") {
  const Desk desk;
  CHECK(desk.bash({"wattweek", "compare", "a"}) == "a.toml|");
  CHECK(desk.bash({"wattweek", "check", "a.toml", "b"}) == "b c.toml|");
  CHECK(desk.bash({"wattweek", "compare", "d"}) == "|");
  CHECK(desk.bash({"wattweek", "compare", "s"}) == "sub|");
  CHECK(desk.bash({"wattweek", "compare", "sub/"}) == "sub/e.toml|");
}

TEST_CASE("completions: an option that repeats is offered again, each time with its files") {
  const Desk desk;
  const std::string first = "wattweek compare a.toml --tariff a.toml --tariff";
  CHECK(desk.bash({"wattweek", "compare", "--tariff", "a.toml", "--ta"}) == "--tariff|");
  CHECK(desk.bash({"wattweek", "compare", "--tariff", "a.toml", "--tariff", "b"}) == "b c.toml|");
  CHECK(desk.fish(first + " ") == "a.toml|b c.toml|sub/|");
  CHECK(desk.fish("wattweek compare --tariff a.toml --ta") == "--tariff|");
  CHECK(desk.zsh("wattweek compare --tariff a.toml --ta", "*--tariff a.toml --tariff=*"));
  CHECK(desk.zsh(first + " b", "*--tariff b\\\\ c.toml*"));
}

TEST_CASE("completions: a log may be a file of any kind, and each is offered once") {
  const Desk desk;
  CHECK(desk.bash({"wattweek", "fit", "d"}) == "d.csv|");
  CHECK(desk.bash({"wattweek", "fit", "s"}) == "sub|");
  CHECK(desk.bash({"wattweek", "fit", "d.csv", "--activity", "d"}) == "d.csv|");
  CHECK(desk.bash({"wattweek", "fit", "d.csv", "--kind", "c"}) == "counter|");
  CHECK(desk.fish("wattweek fit ") == "a.toml|b c.toml|d.csv|sub/|");
  CHECK(desk.zsh("wattweek fit d", "*wattweek fit d.csv*"));
}

TEST_CASE("completions: fish offers commands, options, accepted words and files") {
  const Desk desk;
  CHECK(desk.fish("wattweek ") == listed(command_names()));
  CHECK(desk.fish("wattweek comp") == "compare|");
  CHECK(desk.fish("wattweek --") == "--help|--version|");
  CHECK(desk.fish("wattweek help ") == listed(command_names()));
  CHECK(desk.fish("wattweek compare --fo") == "--format|");
  CHECK(desk.fish("wattweek compare --format ") == listed(formats_of_compare()));
  CHECK(desk.fish("wattweek compare --format=js") == "--format=json|");
  CHECK(desk.fish("wattweek quick --idle ") == "");
  CHECK(desk.fish("wattweek compare ") == "a.toml|b c.toml|sub/|");
  CHECK(desk.fish("wattweek check a.toml sub/") == "sub/e.toml|");
}

TEST_CASE("completions: zsh offers commands, options, accepted words and files") {
  const Desk desk;
  CHECK(desk.zsh("wattweek comp", "*wattweek compare *"));
  CHECK(desk.zsh("wattweek ", "*help *-- what a command does*"));
  CHECK(desk.zsh("wattweek --v", "*wattweek --version *"));
  CHECK(desk.zsh("wattweek help comp", "*wattweek help compare *"));
  CHECK(desk.zsh("wattweek compare --fo", "*wattweek compare --format=*"));
  CHECK(desk.zsh("wattweek compare --format js", "*wattweek compare --format json *"));
  CHECK(desk.zsh("wattweek compare --format=js", "*wattweek compare --format=json *"));
  CHECK(desk.zsh("wattweek compare b", "*wattweek compare b\\\\ c.toml*"));
  CHECK(desk.zsh("wattweek compare ", "*a.toml*b\\\\ c.toml*sub/*"));
}

TEST_CASE("completions: a short form is offered, and what may stand behind it") {
  const Desk desk;
  CHECK(desk.bash({"wattweek", "report", "-o"}) == "-o|");
  CHECK(desk.bash({"wattweek", "report", "a.toml", "-o", "d"}) == "d.csv|");
  CHECK(desk.bash({"wattweek", "report", "a.toml", "--output", "d"}) == "d.csv|");
  CHECK(desk.bash({"wattweek", "report", "--pictures", "s"}) == "sub|");
  CHECK(desk.fish("wattweek report a.toml -o d") == "d.csv|");
  CHECK(desk.fish("wattweek report --ou") == "--output|");
  CHECK(desk.zsh("wattweek report a.toml -o d", "*-o d.csv*"));
  CHECK(desk.zsh("wattweek report --ou", "*wattweek report --output=*"));
}

TEST_CASE("completions: no text of the table is run by a shell, and all of it is shown") {
  const Desk desk(hostile_table());
  CHECK(desk.bash({"wattweek", ""}) == "go|other|");
  CHECK(desk.bash({"wattweek", "go", "--how", ""}) == listed({"$(touch pwned)", "fast", "s'low"}));
  CHECK(desk.bash({"wattweek", "go", "--where", "s"}) == "sub|");
  CHECK(desk.fish("wattweek ") == "go|other|");
  CHECK(desk.fish("wattweek go --how ") == listed({"$(touch pwned)", "fast", "s'low"}));
  CHECK(desk.fish("wattweek go --where s") == "sub/|");
  const std::string shown = "*it?s ?5%? ??touch pwned? ?touch pwned? ?a:b? *";
  CHECK(desk.zsh("wattweek ", shown));
  CHECK(desk.zsh("wattweek go --", shown));
  CHECK(desk.zsh("wattweek go --how fa", "*go --how fast *"));
  CHECK(desk.zsh("wattweek go --where s", "*go --where sub/*"));
  CHECK(desk.is_intact());
}

}  // namespace
}  // namespace wattweek::cli
