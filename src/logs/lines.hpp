#pragma once
// Text in blocks of whole lines.

#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "wattweek/logs/log.hpp"

namespace wattweek::logs {

class LineBlocks {
 public:
  explicit LineBlocks(std::unique_ptr<ByteSource> source);

  /// The next whole lines, each ended by '\n', the last one too; empty at the end, or where it
  /// failed. They stand until the next call, with eight bytes behind them that may be looked at.
  std::string_view next();
  /// Why it ended before its end, in the line behind those given; empty where it did not.
  const std::string& failure() const { return failure_; }

 private:
  bool fill();

  std::unique_ptr<ByteSource> source_;
  std::vector<char> buffer_;
  std::size_t begin_ = 0;  ///< Of what was not yet given.
  std::size_t end_ = 0;
  bool is_over_ = false;
  std::string failure_;
};

/// The next line of `text` without its end ("\n" or "\r\n"), taken away from it. \pre not empty
std::string_view take_line(std::string_view& text);

}  // namespace wattweek::logs
