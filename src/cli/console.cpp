#include "cli/console.hpp"

#include <fmt/format.h>
#include <sys/ioctl.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <cmath>
#include <cstdio>
#include <cstring>

#include "wattweek/diag/printable.hpp"

namespace wattweek::cli {
namespace {

constexpr int kUsualColumns = 80;
constexpr int kMostColumns = 100;
constexpr std::chrono::seconds kPatience{1};
constexpr std::chrono::milliseconds kBetweenLines{200};

}  // namespace

int output_columns() {
  winsize window{};
  if (isatty(STDOUT_FILENO) == 0) return kUsualColumns;
  if (ioctl(STDOUT_FILENO, TIOCGWINSZ, &window) != 0 || window.ws_col == 0) return kUsualColumns;
  return std::min<int>(window.ws_col, kMostColumns);
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
    : next_(Clock::now() + kPatience), on_terminal_(isatty(STDERR_FILENO) != 0) {}

ProgressLine::~ProgressLine() {
  if (shown_ > 0) write_error("\r" + std::string(shown_, ' ') + "\r");
}

void ProgressLine::show(const std::string& what, double fraction) {
  const Clock::time_point now = Clock::now();
  if (now < next_ || (said_ && !on_terminal_)) return;
  const std::string line = fmt::format("wattweek: reckoning {}, {:.0f} % done",
                                       diag::printable(what), 100 * std::clamp(fraction, 0.0, 1.0));
  next_ = now + kBetweenLines;
  said_ = true;
  if (!on_terminal_) return write_error(line + '\n');
  const std::size_t length = diag::character_count(line);
  const std::size_t behind = shown_ > length ? shown_ - length : 0;
  write_error("\r" + line + std::string(behind, ' '));
  shown_ = length;
}

}  // namespace wattweek::cli
