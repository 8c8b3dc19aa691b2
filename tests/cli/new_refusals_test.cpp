// `new DIR`: where it writes, what it refuses, and that nothing is lost.

#include <doctest/doctest.h>

#include <iterator>

#include "new_home.hpp"

namespace wattweek::cli {
namespace {

namespace fs = std::filesystem;

/// The error of a command line that must be refused before anything is written.
std::string refusal(const std::string& words) {
  const TemporaryFolder folder;
  const Run run = shell(folder.path(), "wattweek new " + words);
  CHECK(run.exit_code == 2);
  CHECK(run.out == "");
  CHECK(fs::is_empty(folder.path()));
  return run.err;
}

TEST_CASE("new: a file that is there is never overwritten, and none is added") {
  for (const std::string name : {"study.toml", "profile.toml", "tariff.toml"}) {
    const TemporaryFolder folder;
    folder.write("home/" + name, "mine");
    const Run run = shell(folder.path(), "wattweek new home");
    CHECK(run.exit_code == 2);
    CHECK(run.out == "");
    CHECK(run.err == "wattweek: error: there is 'home/" + name +
                         "' already, and nothing is overwritten; name another folder\n");
    CHECK(file(folder, name) == "mine");
    CHECK(std::distance(fs::directory_iterator(folder.path() / "home"), {}) == 1);
  }
}

TEST_CASE("new: all files in the way are named, links that lead nowhere too") {
  const TemporaryFolder folder;
  folder.write("home/study.toml", "mine");
  fs::create_symlink("nowhere", folder.path() / "home/tariff.toml");
  CHECK(shell(folder.path(), "wattweek new home").err ==
        "wattweek: error: there is 'home/study.toml', 'home/tariff.toml' already, and nothing is "
        "overwritten; name another folder\n");
  CHECK_FALSE(fs::exists(folder.path() / "nowhere"));
}

TEST_CASE("new: a folder that is empty or holds other files will do") {
  const TemporaryFolder folder;
  folder.write("home/notes.txt", "mine");
  made(folder, "");
  CHECK(file(folder, "notes.txt") == "mine");
  CHECK(std::distance(fs::directory_iterator(folder.path() / "home"), {}) == 4);
}

TEST_CASE("new: in the working folder the title is that folder's name") {
  const TemporaryFolder folder;
  fs::create_directory(folder.path() / "garden shed");
  const Run run = shell(folder.path() / "garden shed", "wattweek new .");
  CHECK(run.out.find("\n  wattweek compare ./study.toml\n") != std::string::npos);
  CHECK(has_line(text_of(folder.path() / "garden shed/study.toml"), "title = \"garden shed\""));
}

TEST_CASE("new: any name of a folder is a title that reads, and the next command can be pasted") {
  const TemporaryFolder folder;
  for (const std::string name : {"a \\\"b\\\" \\\\c", "-x",
                                 "k\xC3\xBC"
                                 "che",
                                 "it's", "\\001\\377", "  ", "$HOME"}) {
    CAPTURE(name);
    const std::string word = "\"$(printf '%b' \"" + name + "\")\"";
    const Run run = shell(folder.path(), name == "$HOME"  ? "wattweek new -- '$HOME'"
                                         : name == "it's" ? "wattweek new -- \"it's\""
                                                          : "wattweek new -- " + word);
    CHECK(run.exit_code == 0);
    CHECK(run.err == "");
    const std::size_t at = run.out.find("\n  wattweek compare ") + 3;
    const std::string next = run.out.substr(at, run.out.find('\n', at) - at);
    if (name == "\\001\\377") continue;  // Shown safe, which no command line takes back.
    CHECK(shell(folder.path(), next).exit_code == 0);
  }
}

TEST_CASE("new: option values out of their limits are refused with what is accepted") {
  CHECK(refusal("x --idle -1") ==
        "wattweek: error: --idle: found '-1', accepted is a number of watts, 0 to 1e9\n");
  CHECK(refusal("x --idle 13,5") ==
        "wattweek: error: --idle: found '13,5', accepted is a number of watts, 0 to 1e9, with a "
        "decimal point\n");
  CHECK(refusal("x --idle 20 --busy 10") ==
        "wattweek: error: --busy: found '10', accepted is a number of watts, not below --idle "
        "(20), up to 1e9\n");
  CHECK(refusal("x --busy nan") ==
        "wattweek: error: --busy: found 'nan', accepted is a number of watts, 0 to 1e9\n");
  CHECK(refusal("x --price 2e9") ==
        "wattweek: error: --price: found '2e9', accepted is a price of a kWh, -1e9 to 1e9\n");
  CHECK(refusal("x --currency euro") ==
        "wattweek: error: --currency: found 'euro', accepted are the three capitals of a currency, "
        "such as EUR\n");
  CHECK(refusal("x --zone Europe/Dublim") ==
        "wattweek: error: --zone: found 'Europe/Dublim': no such time zone; did you mean "
        "'Europe/Dublin'?\n");
  for (const std::string start :
       {"2027", "2027-13", "2027-00", "2027-1", "1969-12", "2027-01-01"}) {
    CHECK(refusal("x --start " + start) == "wattweek: error: --start: found '" + start +
                                               "', accepted is a month such as 2027-01, in the "
                                               "years 1970 to 9998\n");
  }
}

TEST_CASE("new: a folder that is none, or cannot be told from the words, is refused") {
  CHECK(refusal("") == "wattweek: error: new: DIR is missing\n");
  CHECK(refusal("''") == "wattweek: error: an empty path names no folder\n");
  CHECK(refusal("a b") == "wattweek: error: new: 'b' is one word too many\n");
  CHECK(refusal("a/b") ==
        "wattweek: error: the folder 'a/b' cannot be made: there is no folder above it\n");
  CHECK(refusal("/dev/null") == "wattweek: error: '/dev/null' is not a folder\n");
}

TEST_CASE("new: figures that look like a slip are taken, and pointed out") {
  const TemporaryFolder folder;
  CHECK(made(folder, "--idle 0.05 --price 30 --currency EUR").err ==
        "wattweek: note: a price of 30 EUR per kWh looks like one in hundredths; write 0.3 if it "
        "is\n"
        "wattweek: note: idle watts of 0.05 of 'my machine' look like kilowatts; write 50 if they "
        "are\n");
  CHECK(has_line(file(folder, "tariff.toml"), "price = 30.0"));
}

TEST_CASE("new: writes the same bytes in every locale") {
  const TemporaryFolder folder;
  const std::string words =
      " new k\xC3\xBC"
      "che --idle 13.5 --busy 29.1 --price 0.25 --start 2027-01";
  std::vector<std::string> seen;
  for (const std::string locale : {"C", "de_DE.UTF-8", "tr_TR.UTF-8"}) {
    const Run run =
        shell(folder.path(), "export TZ=Etc/UTC LC_ALL=" + locale + "; wattweek" + words);
    CHECK(run.exit_code == 0);
    CHECK(run.out.find("  k\xC3\xBC"
                       "che/study.toml\n") != std::string::npos);
    const fs::path home = folder.path() /
                          "k\xC3\xBC"
                          "che";
    seen.push_back(run.out + text_of(home / "study.toml") + text_of(home / "profile.toml") +
                   text_of(home / "tariff.toml"));
    fs::remove_all(home);
  }
  CHECK(seen[0].find("title = \"k\xC3\xBC"
                     "che\"") != std::string::npos);
  CHECK(seen[1] == seen[0]);
  CHECK(seen[2] == seen[0]);
}

TEST_CASE("new: where the disk takes no more, nothing is left behind and the reason is said") {
  const TemporaryFolder folder;
  // Files of more than one block cannot grow, as on a disk that is full.
  const Run run = shell(folder.path(), "trap '' XFSZ; ulimit -f 1; wattweek new home");
  CHECK(run.exit_code == 1);
  CHECK(run.out == "");
  CHECK(run.err ==
        "wattweek: error: 'home/study.toml' cannot be written: File too large; nothing was left "
        "behind\n");
  CHECK(fs::is_empty(folder.path()));
}

TEST_CASE("new: a place where nothing can be written is told with its reason") {
  const Run run = shell("/", "wattweek new /proc/self");
  CHECK(run.exit_code == 1);
  CHECK(run.out == "");
  CHECK(run.err.find("wattweek: error: '/proc/self/study.toml' cannot be written: ") == 0);
  if (geteuid() == 0) return;  // Nothing is forbidden to root.
  const TemporaryFolder folder;
  fs::create_directory(folder.path() / "locked");
  fs::permissions(folder.path() / "locked", fs::perms::owner_read | fs::perms::owner_exec);
  CHECK(shell(folder.path(), "wattweek new locked").err ==
        "wattweek: error: 'locked/study.toml' cannot be written: Permission denied; nothing was "
        "left behind\n");
  CHECK(shell(folder.path(), "wattweek new locked/home").err ==
        "wattweek: error: the folder 'locked/home' cannot be made: Permission denied\n");
}

}  // namespace
}  // namespace wattweek::cli
