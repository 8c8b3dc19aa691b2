#include "cli/written_files.hpp"

#include <fcntl.h>
#include <fmt/format.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <system_error>

#include "cli/outcome.hpp"

namespace wattweek::cli {
namespace {

namespace fs = std::filesystem;

/// As the user would write it: `box.toml` in the folder `.`.
std::string shown(const fs::path& path) { return path.lexically_normal().string(); }

NotWritten failed(const fs::path& path, int error) {
  return {kFailed, fmt::format("'{}' cannot be written: {}; nothing was left behind", shown(path),
                               std::strerror(error))};
}

/// Gives a file another name that nobody has; the number of the error, else 0.
int rename_without_replacing(const fs::path& from, const fs::path& to) {
  if (renameat2(AT_FDCWD, from.c_str(), AT_FDCWD, to.c_str(), RENAME_NOREPLACE) == 0) return 0;
  if (errno != EINVAL && errno != ENOSYS) return errno;
  // A file system that cannot do so in one step: a second name, which replaces nothing either.
  return link(from.c_str(), to.c_str()) == 0 ? 0 : errno;
}

/// Gives a file another name, in place of the file that has it; the number of the error, else 0.
int rename_in_place(const fs::path& from, const fs::path& to) {
  return std::rename(from.c_str(), to.c_str()) == 0 ? 0 : errno;
}

}  // namespace

NotWritten WrittenFiles::taken(const std::string& paths) const {
  return {kWrongInput,
          fmt::format("there is {} already, and nothing is overwritten; {}", paths, advice_)};
}

std::optional<NotWritten> WrittenFiles::refusal(const std::string& folder,
                                                const std::vector<std::string>& names) const {
  std::string paths;
  for (const std::string& name : names) {
    const fs::path path = fs::path(folder) / name;
    std::error_code problem;
    const fs::file_status status = fs::symlink_status(path, problem);
    // A link that leads nowhere takes a name, too.
    const bool may_be_replaced =
        existing_ == Existing::replace && (fs::is_regular_file(status) || fs::is_symlink(status));
    if (!fs::exists(status) || may_be_replaced) continue;
    paths += fmt::format("{}'{}'", paths.empty() ? "" : ", ", shown(path));
  }
  if (paths.empty()) return std::nullopt;
  return taken(paths);
}

WrittenFiles::~WrittenFiles() {
  std::error_code ignored;
  if (!hidden_.empty()) fs::remove_all(hidden_, ignored);
  for (const fs::path& path : placed_) fs::remove(path, ignored);
  if (made_folder_) fs::remove(folder_, ignored);
}

std::optional<NotWritten> WrittenFiles::make_folder() {
  if (folder_.empty()) return NotWritten{kWrongInput, "an empty path names no folder"};
  std::error_code problem;
  const fs::file_status status = fs::status(folder_, problem);
  if (fs::is_directory(status)) return std::nullopt;
  if (fs::exists(status)) {
    return NotWritten{kWrongInput, fmt::format("'{}' is not a folder", folder_.string())};
  }
  if (mkdir(folder_.c_str(), 0777) == 0) {
    made_folder_ = true;
    return std::nullopt;
  }
  const bool no_parent = errno == ENOENT || errno == ENOTDIR;
  return NotWritten{no_parent ? kWrongInput : kFailed,
                    fmt::format("the folder '{}' cannot be made: {}", folder_.string(),
                                no_parent ? "there is no folder above it" : std::strerror(errno))};
}

std::optional<NotWritten> WrittenFiles::write_one(const NewFile& file) const {
  std::FILE* out = std::fopen((hidden_ / file.name).c_str(), "wbx");
  if (out == nullptr) return failed(folder_ / file.name, errno);
  const bool whole = std::fwrite(file.text.data(), 1, file.text.size(), out) == file.text.size();
  const int error = errno;
  if (std::fclose(out) != 0) return failed(folder_ / file.name, errno);
  return whole ? std::nullopt : std::optional(failed(folder_ / file.name, error));
}

std::optional<NotWritten> WrittenFiles::write(const std::string& folder,
                                              const std::vector<NewFile>& files) {
  folder_ = folder;
  for (const NewFile& file : files) names_.push_back(file.name);
  if (auto why = refusal(folder, names_)) return why;
  if (auto why = make_folder()) return why;
  std::string hidden = (folder_ / ".wattweek-XXXXXX").string();
  if (mkdtemp(hidden.data()) == nullptr) return failed(folder_ / files.front().name, errno);
  hidden_ = hidden;
  for (const NewFile& file : files) {
    if (auto why = write_one(file)) return why;
  }
  return std::nullopt;
}

std::optional<NotWritten> WrittenFiles::finish() {
  for (const std::string& name : names_) {
    const auto give_name =
        existing_ == Existing::replace ? rename_in_place : rename_without_replacing;
    const int error = give_name(hidden_ / name, folder_ / name);
    if (error == EEXIST) return taken(fmt::format("'{}'", shown(folder_ / name)));
    if (error != 0) return failed(folder_ / name, error);
    placed_.push_back(folder_ / name);
  }
  placed_.clear();
  made_folder_ = false;
  return std::nullopt;
}

}  // namespace wattweek::cli
