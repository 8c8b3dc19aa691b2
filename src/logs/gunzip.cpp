#include "gunzip.hpp"

#include <zlib.h>

#include <array>

namespace wattweek::logs {
namespace {

constexpr std::size_t kPackedBytes = 1 << 16;
constexpr int kGzipOnly = 16 + MAX_WBITS;

class Gunzip : public ByteSource {
 public:
  explicit Gunzip(std::unique_ptr<ByteSource> packed) : packed_(std::move(packed)) {
    if (inflateInit2(&stream_, kGzipOnly) != Z_OK) failure_ = "there is no memory to unpack it";
  }
  ~Gunzip() override { inflateEnd(&stream_); }
  Gunzip(const Gunzip&) = delete;
  Gunzip& operator=(const Gunzip&) = delete;

  std::size_t read(std::span<char> bytes) override {
    stream_.next_out = reinterpret_cast<Bytef*>(bytes.data());
    stream_.avail_out = static_cast<uInt>(bytes.size());
    while (failure_.empty() && !is_over_ && stream_.avail_out == bytes.size()) step();
    return bytes.size() - stream_.avail_out;
  }

  std::string failure() const override { return failure_.empty() ? packed_->failure() : failure_; }

 private:
  void step() {
    if (stream_.avail_in == 0 && !refill()) return;
    if (is_between_members_ && is_padding()) return;
    const int result = inflate(&stream_, Z_NO_FLUSH);
    if (result == Z_STREAM_END) {
      is_between_members_ = true;
      inflateReset(&stream_);
    } else if (result == Z_OK) {
      is_between_members_ = false;
    } else {
      failure_ = "its gzip data are damaged";
    }
  }

  // Zeros behind the last member, as tapes and copies of whole blocks leave them.
  bool is_padding() {
    if (*stream_.next_in != 0) return false;
    while (stream_.avail_in > 0 && *stream_.next_in == 0) {
      ++stream_.next_in;
      --stream_.avail_in;
    }
    return true;
  }

  // False at the end of the packed bytes, which is in order between members only.
  bool refill() {
    const std::size_t got = packed_->read(buffer_);
    stream_.next_in = reinterpret_cast<Bytef*>(buffer_.data());
    stream_.avail_in = static_cast<uInt>(got);
    if (got > 0) return true;
    is_over_ = true;
    if (!is_between_members_) failure_ = "its gzip data end too early";
    return false;
  }

  std::unique_ptr<ByteSource> packed_;
  z_stream stream_{};
  std::array<char, kPackedBytes> buffer_{};
  bool is_between_members_ = false;
  bool is_over_ = false;
  std::string failure_;
};

}  // namespace

bool is_gzip(std::span<const char> beginning) {
  return beginning.size() >= 2 && beginning[0] == '\x1f' && beginning[1] == '\x8b';
}

std::unique_ptr<ByteSource> gunzip(std::unique_ptr<ByteSource> packed) {
  return std::make_unique<Gunzip>(std::move(packed));
}

}  // namespace wattweek::logs
