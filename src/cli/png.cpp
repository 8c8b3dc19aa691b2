#include "cli/png.hpp"

#include <fcntl.h>
#include <fmt/format.h>
#include <spawn.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <cstdlib>
#include <cstring>
#include <string_view>
#include <vector>

#include "cli/files.hpp"

namespace wattweek::cli {
namespace {

namespace fs = std::filesystem;

// Charts are 480 px wide; a screen of today shows two dots for each.
constexpr const char* kWidthPx = "960";

/// The first line of what the program said; empty where it said nothing.
std::string first_line(const fs::path& said) {
  const auto read = read_file(said.string());
  const auto* source = std::get_if<read::SourceText>(&read);
  return source == nullptr ? "" : source->text.substr(0, source->text.find('\n'));
}

std::string ended(int status, const fs::path& said) {
  if (WIFSIGNALED(status))
    return fmt::format("{} was ended by signal {}", kConverter, WTERMSIG(status));
  const std::string line = first_line(said);
  if (!line.empty()) return fmt::format("{}: {}", kConverter, line);
  return fmt::format("{} ended with exit code {}", kConverter, WEXITSTATUS(status));
}

/// Starts a program without a shell; the number of the error, else 0.
int start(const std::vector<std::string>& words, const fs::path& said, pid_t& child) {
  std::vector<char*> pointers;
  // The system takes them as they are, and changes nothing in them.
  for (const std::string& word : words) pointers.push_back(const_cast<char*>(word.c_str()));
  pointers.push_back(nullptr);
  posix_spawn_file_actions_t actions;
  posix_spawn_file_actions_init(&actions);
  posix_spawn_file_actions_addopen(&actions, STDIN_FILENO, "/dev/null", O_RDONLY, 0);
  posix_spawn_file_actions_addopen(&actions, STDOUT_FILENO, said.c_str(),
                                   O_WRONLY | O_CREAT | O_TRUNC, 0600);
  posix_spawn_file_actions_adddup2(&actions, STDOUT_FILENO, STDERR_FILENO);
  const int error =
      posix_spawn(&child, words.front().c_str(), &actions, nullptr, pointers.data(), environ);
  posix_spawn_file_actions_destroy(&actions);
  return error;
}

}  // namespace

std::optional<fs::path> converter() {
  const char* path = std::getenv("PATH");
  std::string_view rest = path == nullptr ? "" : path;
  while (!rest.empty()) {
    const std::string_view folder = rest.substr(0, rest.find(':'));
    rest.remove_prefix(std::min(folder.size() + 1, rest.size()));
    if (folder.empty()) continue;
    const fs::path program = fs::path(folder) / kConverter;
    std::error_code problem;
    if (fs::is_regular_file(program, problem) && access(program.c_str(), X_OK) == 0) return program;
  }
  return std::nullopt;
}

std::optional<std::string> convert(const fs::path& program, const fs::path& svg,
                                   const fs::path& png, const fs::path& said) {
  // A path that began with a dash would be an option.
  const auto whole = [](const fs::path& path) { return fs::absolute(path).string(); };
  const std::vector<std::string> words = {
      whole(program), "--width",  kWidthPx,  "--keep-aspect-ratio",
      "--output",     whole(png), whole(svg)};
  pid_t child = 0;
  if (const int error = start(words, said, child); error != 0) {
    return fmt::format("{} cannot be started: {}", kConverter, std::strerror(error));
  }
  int status = 0;
  while (waitpid(child, &status, 0) < 0) {
    if (errno != EINTR) return fmt::format("{} got lost: {}", kConverter, std::strerror(errno));
  }
  if (status != 0) return ended(status, said);
  std::error_code problem;
  if (!fs::is_regular_file(png, problem)) return fmt::format("{} wrote no file", kConverter);
  return std::nullopt;
}

}  // namespace wattweek::cli
