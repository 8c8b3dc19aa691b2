#include "text_source.hpp"

#include <algorithm>
#include <array>
#include <string_view>
#include <vector>

#include "gunzip.hpp"
#include "utf16.hpp"

namespace wattweek::logs {
namespace {

constexpr std::size_t kBeginning = 1 << 16;

// A source whose first bytes were looked at, and are given again.
class LookedAt : public ByteSource {
 public:
  explicit LookedAt(std::unique_ptr<ByteSource> rest) : rest_(std::move(rest)), held_(kBeginning) {
    std::size_t filled = 0;
    while (filled < held_.size()) {
      const std::size_t got = rest_->read(std::span(held_).subspan(filled));
      if (got == 0) break;
      filled += got;
    }
    held_.resize(filled);
  }

  std::string_view beginning() const { return {held_.data(), held_.size()}; }
  void skip(std::size_t bytes) { given_ += bytes; }

  std::size_t read(std::span<char> bytes) override {
    if (given_ == held_.size()) return rest_->read(bytes);
    const std::size_t count = std::min(bytes.size(), held_.size() - given_);
    std::copy_n(held_.begin() + static_cast<std::ptrdiff_t>(given_), count, bytes.begin());
    given_ += count;
    return count;
  }

  std::string failure() const override { return rest_->failure(); }

 private:
  std::unique_ptr<ByteSource> rest_;
  std::vector<char> held_;
  std::size_t given_ = 0;
};

// Carriage returns alone as line ends.
class CarriageReturns : public ByteSource {
 public:
  explicit CarriageReturns(std::unique_ptr<ByteSource> text) : text_(std::move(text)) {}

  std::size_t read(std::span<char> bytes) override {
    const std::size_t got = text_->read(bytes);
    std::replace(bytes.begin(), bytes.begin() + static_cast<std::ptrdiff_t>(got), '\r', '\n');
    return got;
  }

  std::string failure() const override { return text_->failure(); }

 private:
  std::unique_ptr<ByteSource> text_;
};

struct Signature {
  std::string_view bytes;
  std::string_view what;
};

constexpr std::array<Signature, 6> kNoText = {{
    {"PK\x03\x04", "a spreadsheet or zip archive; save the sheet as CSV, or unpack it first"},
    {"\xd0\xcf\x11\xe0", "a spreadsheet of an old kind; save the sheet as CSV first"},
    {"\xfd"
     "7zXZ",
     "compressed by xz; unpack it first, or compress it by gzip"},
    {"BZh", "compressed by bzip2; unpack it first, or compress it by gzip"},
    {"\x28\xb5\x2f\xfd", "compressed by zstd; unpack it first, or compress it by gzip"},
    {"%PDF", "a PDF; a log is text: CSV or JSON"},
}};

std::string why_no_text(std::string_view beginning) {
  for (const Signature& signature : kNoText) {
    if (beginning.substr(0, signature.bytes.size()) == signature.bytes) {
      return "this is " + std::string(signature.what);
    }
  }
  if (beginning.find('\0') != std::string_view::npos) {
    return "this is no text: it has bytes of value 0; a log is text (CSV or JSON), or that packed "
           "by gzip";
  }
  return {};
}

std::unique_ptr<LookedAt> look_at(std::unique_ptr<ByteSource> source) {
  return std::make_unique<LookedAt>(std::move(source));
}

}  // namespace

std::variant<std::unique_ptr<ByteSource>, std::string> open_text(const LogFile& file) {
  auto source = look_at(file.open());
  if (is_gzip(source->beginning())) source = look_at(gunzip(std::move(source)));
  if (const auto code = utf16_of(source->beginning())) {
    source->skip(code->mark_bytes);
    source = look_at(from_utf16(std::move(source), code->big_end_first));
  }
  const std::string_view beginning = source->beginning();
  constexpr std::string_view kMark = "\xef\xbb\xbf";
  if (beginning.substr(0, kMark.size()) == kMark) source->skip(kMark.size());
  if (std::string reason = why_no_text(beginning); !reason.empty()) return reason;
  if (beginning.find('\n') == std::string_view::npos &&
      beginning.find('\r') != std::string_view::npos) {
    return std::make_unique<CarriageReturns>(std::move(source));
  }
  return source;
}

}  // namespace wattweek::logs
