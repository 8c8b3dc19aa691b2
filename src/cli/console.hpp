#pragma once
// The terminal, or what stands in its place.

#include <condition_variable>
#include <mutex>
#include <string>
#include <thread>

#include "wattweek/report/report.hpp"

namespace wattweek::cli {

/// How text for standard output is laid out. On a terminal: as wide as that, 100 columns at most,
/// and with emphasis, unless `NO_COLOR` is set (https://no-color.org) or the terminal is `dumb`.
/// Elsewhere: 80 columns, plain.
report::Style output_style();

/// Writes all of the text to standard output; the reason where that fails, else empty.
std::string write_output(const std::string& text);

/// Writes to standard error; where that fails there is nobody left to tell.
void write_error(const std::string& text);

/// Says on standard error how far a long reckoning is, from its first second on and as long as
/// it lives: a line that is overwritten on a terminal, else one plain line. It watches the clock by
/// itself, so that one long step is told of too.
class ProgressLine {
 public:
  ProgressLine();
  ~ProgressLine();
  ProgressLine(const ProgressLine&) = delete;
  ProgressLine& operator=(const ProgressLine&) = delete;

  /// What is being done now, and how much of all is behind, in [0, 1].
  void show(const std::string& what, double fraction);

 private:
  void watch();
  void write(const std::string& line);

  bool on_terminal_;
  std::size_t shown_ = 0;  ///< Characters of the line that stands on the terminal.
  std::mutex mutex_;       ///< Guards what follows.
  std::condition_variable ended_;
  bool is_over_ = false;
  std::string line_;
  std::thread watcher_;  ///< Last, since it uses all of the above.
};

}  // namespace wattweek::cli
