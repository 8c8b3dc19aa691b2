#include "utf16.hpp"

#include <algorithm>
#include <array>
#include <utility>

namespace wattweek::logs {
namespace {

constexpr char32_t kNoCharacter = 0xfffd;
constexpr std::size_t kLongestCharacter = 4;

bool is_high(char32_t unit) { return unit >= 0xd800 && unit < 0xdc00; }
bool is_low(char32_t unit) { return unit >= 0xdc00 && unit < 0xe000; }

// Bytes that were written to `out`, which has room for four.
std::size_t to_utf8(char32_t c, char* out) {
  const auto continued = [](char32_t bits) { return static_cast<char>(0x80 | (bits & 0x3f)); };
  if (c < 0x80) return out[0] = static_cast<char>(c), 1;
  if (c < 0x800) {
    out[0] = static_cast<char>(0xc0 | (c >> 6));
    out[1] = continued(c);
    return 2;
  }
  if (c < 0x10000) {
    out[0] = static_cast<char>(0xe0 | (c >> 12));
    out[1] = continued(c >> 6);
    out[2] = continued(c);
    return 3;
  }
  out[0] = static_cast<char>(0xf0 | (c >> 18));
  out[1] = continued(c >> 12);
  out[2] = continued(c >> 6);
  out[3] = continued(c);
  return 4;
}

class FromUtf16 : public ByteSource {
 public:
  FromUtf16(std::unique_ptr<ByteSource> source, bool big_end_first)
      : source_(std::move(source)), first_(big_end_first ? 0 : 1) {}

  std::size_t read(std::span<char> bytes) override {
    std::size_t written = 0;
    while (written < bytes.size()) {
      if (given_ == length_) {
        written += take_ascii(bytes.subspan(written));
        if (written == bytes.size()) break;
        const auto c = next_character();
        if (!c) break;
        length_ = to_utf8(*c, character_.data());
        given_ = 0;
      }
      bytes[written++] = character_[given_++];
    }
    return written;
  }

  std::string failure() const override { return source_->failure(); }

 private:
  // What nearly all of a log is, all at once.
  std::size_t take_ascii(std::span<char> to) {
    if (ahead_) return 0;
    const std::size_t most = std::min(to.size(), (size_ - at_) / 2);
    const auto high = static_cast<std::size_t>(first_), low = 1 - high;
    std::size_t taken = 0;
    for (; taken < most; ++taken) {
      const char* const unit = buffer_.data() + at_ + 2 * taken;
      if (unit[high] != 0 || static_cast<unsigned char>(unit[low]) >= 0x80) break;
      to[taken] = unit[low];
    }
    at_ += 2 * taken;
    return taken;
  }

  std::optional<char32_t> next_character() {
    const auto unit = next_unit();
    if (!unit || !is_high(*unit)) return unit && is_low(*unit) ? kNoCharacter : unit;
    const auto low = next_unit();
    if (low && is_low(*low)) return 0x10000 + ((*unit - 0xd800) << 10) + (*low - 0xdc00);
    ahead_ = low;
    return kNoCharacter;
  }

  std::optional<char32_t> next_unit() {
    if (ahead_) return std::exchange(ahead_, std::nullopt);
    const auto a = next_byte();
    const auto b = a ? next_byte() : a;
    if (!b) return std::nullopt;
    return first_ == 0 ? *a << 8 | *b : *b << 8 | *a;
  }

  std::optional<char32_t> next_byte() {
    if (at_ == size_) {
      size_ = source_->read(buffer_);
      at_ = 0;
      if (size_ == 0) return std::nullopt;
    }
    return static_cast<unsigned char>(buffer_[at_++]);
  }

  std::unique_ptr<ByteSource> source_;
  int first_;  // Which of two bytes is the greater one.
  std::array<char, 1 << 14> buffer_{};
  std::size_t at_ = 0;
  std::size_t size_ = 0;
  std::optional<char32_t> ahead_;
  std::array<char, kLongestCharacter> character_{};  // In UTF-8; may not fit in one answer.
  std::size_t given_ = 0;
  std::size_t length_ = 0;
};

}  // namespace

std::optional<Utf16> utf16_of(std::string_view beginning) {
  if (beginning.substr(0, 2) == "\xff\xfe") return Utf16{false, 2};
  if (beginning.substr(0, 2) == "\xfe\xff") return Utf16{true, 2};
  if (beginning.size() < 4) return std::nullopt;
  const std::string_view few = beginning.substr(0, std::min<std::size_t>(beginning.size(), 64));
  std::array<std::size_t, 2> zeros{};
  for (std::size_t i = 0; i < few.size(); ++i) zeros[i % 2] += few[i] == '\0';
  const std::size_t most = few.size() / 2 * 9 / 10;
  if (zeros[1] >= most && zeros[0] == 0) return Utf16{false, 0};
  if (zeros[0] >= most && zeros[1] == 0) return Utf16{true, 0};
  return std::nullopt;
}

std::unique_ptr<ByteSource> from_utf16(std::unique_ptr<ByteSource> source, bool big_end_first) {
  return std::make_unique<FromUtf16>(std::move(source), big_end_first);
}

}  // namespace wattweek::logs
