#pragma once
// The terminal, or what stands in its place.

#include <chrono>
#include <string>

#include "wattweek/decide/assessment.hpp"

namespace wattweek::cli {

/// Columns of standard output: those of the terminal, 100 at most; 80 where it is none.
int output_columns();

/// Writes all of the text to standard output; the reason where that fails, else empty.
std::string write_output(const std::string& text);

/// Writes to standard error; where that fails there is nobody left to tell.
void write_error(const std::string& text);

/// Says on standard error how far a long reckoning is, from its first second on: a line that
/// is overwritten on a terminal, else one plain line.
class ProgressLine {
 public:
  ProgressLine();
  ~ProgressLine();
  ProgressLine(const ProgressLine&) = delete;
  ProgressLine& operator=(const ProgressLine&) = delete;

  void show(const std::string& what, double fraction);

 private:
  using Clock = std::chrono::steady_clock;
  Clock::time_point next_;
  bool on_terminal_;
  std::size_t shown_ = 0;  ///< Characters of the line that stands on the terminal.
  bool said_ = false;
};

}  // namespace wattweek::cli
