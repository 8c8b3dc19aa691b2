#pragma once
// The built program on a terminal of a given width.

#include <doctest/doctest.h>
#include <pty.h>
#include <sys/wait.h>
#include <unistd.h>

#include <array>
#include <string>

namespace wattweek::cli {

/// What a shell command leaves on a terminal of so many columns, in the root of the source tree;
/// the program is `wattweek`. Line ends are plain `\n`.
inline std::string on_terminal(int columns, const std::string& command) {
  winsize size{};
  size.ws_col = static_cast<unsigned short>(columns);
  size.ws_row = 50;
  int terminal = -1;
  const pid_t child = forkpty(&terminal, nullptr, nullptr, &size);
  REQUIRE(child >= 0);
  if (child == 0) {
    const std::string whole = "cd '" WATTWEEK_SOURCE_DIR "' && wattweek() { '" WATTWEEK_PROGRAM
                              "' \"$@\"; } && " +
                              command;
    execl("/bin/sh", "sh", "-c", whole.c_str(), static_cast<char*>(nullptr));
    _exit(127);
  }
  std::string shown;
  std::array<char, 4096> buffer{};
  for (ssize_t got; (got = read(terminal, buffer.data(), buffer.size())) > 0;) {
    for (const char c : std::string_view(buffer.data(), static_cast<std::size_t>(got))) {
      if (c != '\r') shown += c;
    }
  }
  close(terminal);
  int status = 0;
  REQUIRE(waitpid(child, &status, 0) == child);
  CHECK(WEXITSTATUS(status) == 0);
  return shown;
}

}  // namespace wattweek::cli
