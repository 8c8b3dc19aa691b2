// Whole screens of the demo, as files in `screens`. A screen that changes on purpose is written
// anew by WATTWEEK_WRITE_SCREENS=1, and read before it is committed.

#include "../support/widest_line.hpp"
#include "program.hpp"
#include "terminal.hpp"
#include "wattweek/diag/printable.hpp"

namespace wattweek::cli {
namespace {

constexpr const char* kCompare = "wattweek compare docs/examples/ostrawick.toml";

void check_screen(const std::string& name, const std::string& got) {
  const std::filesystem::path path =
      std::filesystem::path(WATTWEEK_SOURCE_DIR "/tests/cli/screens") / name;
  if (std::getenv("WATTWEEK_WRITE_SCREENS") != nullptr) {
    std::ofstream(path, std::ios::binary) << got;
  }
  CAPTURE(name);
  CHECK(text_of(path) == got);
}

std::string screen_name(int columns) { return "ostrawick-" + std::to_string(columns) + ".txt"; }

using tests::widest_line;

std::string without(std::string text, const std::string& piece) {
  for (std::size_t at; (at = text.find(piece)) != std::string::npos;) text.erase(at, piece.size());
  return text;
}

TEST_CASE("screens: the demo on terminals of 60, 80 and 100 columns") {
  for (const int columns : {60, 80, 100}) {
    const std::string got =
        on_terminal(columns, "export NO_COLOR=1 TERM=xterm; " + std::string(kCompare));
    check_screen(screen_name(columns), got);
    CHECK(widest_line(got) <= static_cast<std::size_t>(columns));
  }
}

TEST_CASE("screens: what goes into a pipe is the screen of 80 columns, in any language") {
  for (const char* language : {"C", "de_DE.UTF-8"}) {
    const Run run = shell(WATTWEEK_SOURCE_DIR,
                          "export LC_ALL=" + std::string(language) + "; " + std::string(kCompare));
    CHECK(run.out == text_of(WATTWEEK_SOURCE_DIR "/tests/cli/screens/" + screen_name(80)));
  }
}

TEST_CASE("screens: a terminal wider than 100 columns is not filled") {
  CHECK(on_terminal(200, "export NO_COLOR=1 TERM=xterm; " + std::string(kCompare)) ==
        text_of(WATTWEEK_SOURCE_DIR "/tests/cli/screens/" + screen_name(100)));
}

TEST_CASE("screens: on a terminal headings are bold, and nothing else changes") {
  const std::string bold =
      on_terminal(80, "unset NO_COLOR; export TERM=xterm; " + std::string(kCompare));
  CHECK(bold.find("\x1b[1mOstrawick\x1b[0m\n") == 0);
  CHECK(bold.find("\n\x1b[1mBear in mind\x1b[0m\n") != std::string::npos);
  CHECK(without(without(bold, "\x1b[1m"), "\x1b[0m") ==
        text_of(WATTWEEK_SOURCE_DIR "/tests/cli/screens/" + screen_name(80)));
}

TEST_CASE("screens: neither NO_COLOR nor a dumb terminal nor a pipe gets escape sequences") {
  for (const char* setting : {"export TERM=xterm NO_COLOR=1", "export TERM=dumb; unset NO_COLOR",
                              "unset TERM NO_COLOR"}) {
    CAPTURE(setting);
    CHECK(on_terminal(80, setting + std::string("; ") + kCompare).find('\x1b') ==
          std::string::npos);
  }
  CHECK(shell(WATTWEEK_SOURCE_DIR, "export TERM=xterm; unset NO_COLOR; " + std::string(kCompare))
            .out.find('\x1b') == std::string::npos);
}

TEST_CASE("screens: an empty NO_COLOR does not count as set") {
  CHECK(on_terminal(80, "export NO_COLOR= TERM=xterm; " + std::string(kCompare)).find('\x1b') !=
        std::string::npos);
}

}  // namespace
}  // namespace wattweek::cli
