#pragma once
// The terminal, or what stands in its place.

#include <condition_variable>
#include <mutex>
#include <string>
#include <thread>

namespace wattweek::cli {

/// Columns of standard output: those of the terminal, 100 at most; 80 where it is none.
int output_columns();

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
