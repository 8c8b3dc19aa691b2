#include "cli/log_file.hpp"

#include <fcntl.h>
#include <fmt/format.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <cstring>

#include "cli/files.hpp"

namespace wattweek::cli {
namespace {

class OpenFile : public logs::ByteSource {
 public:
  explicit OpenFile(const std::string& path) : file_(open(path.c_str(), O_RDONLY | O_CLOEXEC)) {
    if (file_ < 0) {
      failure_ = fmt::format("the file cannot be opened: {}", std::strerror(errno));
    } else {
      posix_fadvise(file_, 0, 0, POSIX_FADV_SEQUENTIAL);
      bytes_ = size();
    }
  }
  ~OpenFile() override {
    if (file_ >= 0) close(file_);
  }
  OpenFile(const OpenFile&) = delete;
  OpenFile& operator=(const OpenFile&) = delete;

  // Never beyond the size that the file had when it was opened: one that is written to as fast as
  // it is read would have no end.
  std::size_t read(std::span<char> bytes) override {
    if (!failure_.empty()) return 0;
    const std::size_t most = std::min(bytes.size(), static_cast<std::size_t>(bytes_ - read_));
    const ssize_t got = most == 0 ? 0 : ::read(file_, bytes.data(), most);
    if (got < 0) failure_ = fmt::format("the file cannot be read: {}", std::strerror(errno));
    if (got <= 0) {
      if (failure_.empty() && (read_ != bytes_ || size() != bytes_)) {
        failure_ = "the file changed while it was read; fit a copy of it";
      }
      return 0;
    }
    read_ += got;
    return static_cast<std::size_t>(got);
  }

  std::string failure() const override { return failure_; }

 private:
  off_t size() const {
    struct stat status {};
    return fstat(file_, &status) == 0 ? status.st_size : 0;
  }

  int file_;
  off_t bytes_ = 0;
  off_t read_ = 0;
  std::string failure_;
};

}  // namespace

std::variant<logs::LogFile, read::Unreadable> log_file(const std::string& path) {
  if (auto why = why_not_to_open(path)) return *std::move(why);
  struct stat status {};
  const auto bytes =
      stat(path.c_str(), &status) == 0 ? static_cast<std::uint64_t>(status.st_size) : 0;
  return logs::LogFile{path, bytes, [path] { return std::make_unique<OpenFile>(path); }};
}

}  // namespace wattweek::cli
