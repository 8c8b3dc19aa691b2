#include "cli/console.hpp"

#include <fmt/format.h>
#include <sys/ioctl.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <string_view>
#include <utility>

#include "wattweek/diag/printable.hpp"

namespace wattweek::cli {
namespace {

constexpr int kUsualColumns = 80;
constexpr int kMostColumns = 100;
constexpr std::chrono::seconds kPatience{1};
constexpr std::chrono::milliseconds kBetweenLines{500};

int terminal_columns() {
  winsize window{};
  if (ioctl(STDOUT_FILENO, TIOCGWINSZ, &window) != 0 || window.ws_col == 0) return kUsualColumns;
  return std::min<int>(window.ws_col, kMostColumns);
}

bool has_emphasis() {
  const char* no_color = std::getenv("NO_COLOR");
  const char* term = std::getenv("TERM");
  const bool refused = no_color != nullptr && *no_color != '\0';
  return !refused && term != nullptr && std::string_view(term) != "dumb";
}

}  // namespace

report::Style output_style() {
  if (isatty(STDOUT_FILENO) == 0) return {kUsualColumns, false};
  return {terminal_columns(), has_emphasis()};
}

std::string write_output(const std::string& text) {
  if (text.empty()) return "";
  const bool whole = std::fwrite(text.data(), 1, text.size(), stdout) == text.size();
  if (whole && std::fflush(stdout) == 0) return "";
  return fmt::format("standard output cannot be written: {}", std::strerror(errno));
}

void write_error(const std::string& text) {
  std::fwrite(text.data(), 1, text.size(), stderr);
  std::fflush(stderr);
}

ProgressLine::ProgressLine()
    : on_terminal_(isatty(STDERR_FILENO) != 0), watcher_([this] { watch(); }) {}

ProgressLine::~ProgressLine() {
  {
    const std::lock_guard lock(mutex_);
    is_over_ = true;
  }
  ended_.notify_one();
  watcher_.join();
  if (shown_ > 0) write_error("\r" + std::string(shown_, ' ') + "\r");
}

void ProgressLine::show(const std::string& what, double fraction) {
  std::string line = fmt::format("wattweek: reckoning {}, {:.0f} % done", diag::printable(what),
                                 100 * std::clamp(fraction, 0.0, 1.0));
  const std::lock_guard lock(mutex_);
  line_ = std::move(line);
}

void ProgressLine::watch() {
  std::unique_lock lock(mutex_);
  if (ended_.wait_for(lock, kPatience, [this] { return is_over_; })) return;
  do {
    write(line_);
  } while (on_terminal_ && !ended_.wait_for(lock, kBetweenLines, [this] { return is_over_; }));
}

void ProgressLine::write(const std::string& line) {
  if (!on_terminal_) return write_error(line + '\n');
  const std::size_t length = diag::column_count(line);
  const std::size_t behind = shown_ > length ? shown_ - length : 0;
  write_error("\r" + line + std::string(behind, ' '));
  shown_ = length;
}

}  // namespace wattweek::cli
