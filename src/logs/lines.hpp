#pragma once
// Text in blocks of whole lines.

#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "wattweek/logs/log.hpp"

namespace wattweek::logs {

/// Whole lines, each ended by '\n', the last one too.
struct Block {
  std::string_view text;         ///< Until the next call.
  std::uint64_t first_line = 1;  ///< Number of its first line.
};

class LineBlocks {
 public:
  explicit LineBlocks(std::unique_ptr<ByteSource> source);

  /// The next block; empty text at the end, or where it failed.
  Block next();
  /// Why it ended before its end; empty where it did not. `line` is where.
  const std::string& failure() const { return failure_; }
  std::uint64_t line() const { return next_line_; }

 private:
  bool fill();

  std::unique_ptr<ByteSource> source_;
  std::vector<char> buffer_;
  std::size_t begin_ = 0;  ///< Of what was not yet given.
  std::size_t end_ = 0;
  std::uint64_t next_line_ = 1;
  std::uint64_t given_lines_ = 0;
  bool is_over_ = false;
  std::string failure_;
};

/// The next line of `text` without its end ("\n" or "\r\n"), taken away from it. \pre not empty
std::string_view take_line(std::string_view& text);

}  // namespace wattweek::logs
