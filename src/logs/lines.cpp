#include "lines.hpp"

#include <algorithm>
#include <cstring>

#include "wattweek/logs/read_log.hpp"

namespace wattweek::logs {
namespace {

// Stays in a core's cache beside what is reckoned from it.
constexpr std::size_t kBlock = 1 << 17;
// Behind the text: the end of a last line that has none, and what may be looked at.
constexpr std::size_t kBehind = 1 + 8;

}  // namespace

LineBlocks::LineBlocks(std::unique_ptr<ByteSource> source)
    : source_(std::move(source)), buffer_(kBlock) {}

// Reads behind what is held; false at the end.
bool LineBlocks::fill() {
  if (begin_ > 0) {
    std::memmove(buffer_.data(), buffer_.data() + begin_, end_ - begin_);
    end_ -= begin_;
    begin_ = 0;
  }
  if (end_ + kBehind >= buffer_.size()) buffer_.resize(buffer_.size() * 2);
  const std::size_t got =
      source_->read(std::span(buffer_).subspan(end_, buffer_.size() - end_ - kBehind));
  end_ += got;
  return got > 0;
}

std::string_view LineBlocks::next() {
  std::size_t searched = begin_;
  while (!is_over_) {
    const std::size_t held = end_ - begin_;
    if (!fill()) {
      is_over_ = true;
      failure_ = source_->failure();
      if (end_ > begin_ && failure_.empty() && buffer_[end_ - 1] != '\n') buffer_[end_++] = '\n';
      searched = begin_;
    } else {
      searched = begin_ + held;
    }
    const std::string_view fresh(buffer_.data() + searched, end_ - searched);
    if (const auto last = fresh.rfind('\n'); last != std::string_view::npos) {
      const std::string_view text(buffer_.data() + begin_, searched + last + 1 - begin_);
      begin_ += text.size();
      return text;
    }
    if (end_ - begin_ > kLongestLine) {
      failure_ = "this line has more than 1048576 bytes; a row of a log is shorter";
      is_over_ = true;
    }
  }
  return {};
}

std::string_view take_line(std::string_view& text) {
  const std::size_t end = text.find('\n');
  std::string_view line = text.substr(0, end);
  text.remove_prefix(end == std::string_view::npos ? text.size() : end + 1);
  if (!line.empty() && line.back() == '\r') line.remove_suffix(1);
  return line;
}

}  // namespace wattweek::logs
