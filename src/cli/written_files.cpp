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

/// A second name for the file that is to be replaced, so that it can come back; the number of the
/// error, else 0.
int keep(const fs::path& path, const fs::path& former) {
  if (link(path.c_str(), former.c_str()) == 0) return 0;
  // A file system without second names: it is gone for a moment.
  return std::rename(path.c_str(), former.c_str()) == 0 ? 0 : errno;
}

bool is_file_or_link(const fs::path& path) {
  std::error_code problem;
  const fs::file_status status = fs::symlink_status(path, problem);
  return fs::is_regular_file(status) || fs::is_symlink(status);
}

/// Does anything have this name? A link that leads nowhere has it, too.
bool is_taken(const fs::path& path) {
  std::error_code problem;
  return fs::exists(fs::symlink_status(path, problem));
}

}  // namespace

WrittenFiles::WrittenFiles(const std::string& advice, Existing existing)
    : replacing_{[existing](const fs::path& path) {
                   return existing == Existing::replace && is_file_or_link(path);
                 },
                 "nothing is overwritten; " + advice} {}

NotWritten WrittenFiles::taken(const std::string& paths) const {
  return {kWrongInput, fmt::format("there is {} already, and {}", paths, replacing_.advice)};
}

std::optional<NotWritten> WrittenFiles::refusal(const std::string& folder,
                                                const std::vector<std::string>& names) const {
  std::string paths;
  for (const std::string& name : names) {
    const fs::path path = fs::path(folder) / name;
    if (!is_taken(path) || replacing_.is_allowed(path)) continue;
    paths += fmt::format("{}'{}'", paths.empty() ? "" : ", ", shown(path));
  }
  if (paths.empty()) return std::nullopt;
  return taken(paths);
}

WrittenFiles::~WrittenFiles() {
  std::error_code ignored;
  for (auto each = placed_.rbegin(); each != placed_.rend(); ++each) {
    if (each->former.empty()) {
      fs::remove(each->path, ignored);
    } else {
      fs::rename(each->former, each->path, ignored);
    }
  }
  for (auto folder = folders_.rbegin(); folder != folders_.rend(); ++folder) {
    if (!folder->hidden.empty()) fs::remove_all(folder->hidden, ignored);
    if (folder->is_made_here) fs::remove(folder->path, ignored);
  }
}

std::optional<NotWritten> WrittenFiles::why_no_folder(const fs::path& folder) {
  if (folder.empty()) return NotWritten{kWrongInput, "an empty path names no folder"};
  std::error_code problem;
  const fs::file_status status = fs::status(folder, problem);
  if (fs::is_directory(status)) return std::nullopt;
  if (fs::exists(status)) {
    return NotWritten{kWrongInput, fmt::format("'{}' is not a folder", folder.string())};
  }
  const fs::path named = folder.has_filename() ? folder : folder.parent_path();
  const fs::path above = named.has_parent_path() ? named.parent_path() : fs::path(".");
  if (fs::is_directory(above, problem)) return std::nullopt;
  return NotWritten{
      kWrongInput,
      fmt::format("the folder '{}' cannot be made: there is no folder above it", folder.string())};
}

std::optional<NotWritten> WrittenFiles::make(Folder& folder) {
  if (auto why = why_no_folder(folder.path)) return why;
  std::error_code problem;
  if (fs::is_directory(folder.path, problem)) return std::nullopt;
  if (mkdir(folder.path.c_str(), 0777) == 0) {
    folder.is_made_here = true;
    return std::nullopt;
  }
  return NotWritten{kFailed, fmt::format("the folder '{}' cannot be made: {}", folder.path.string(),
                                         std::strerror(errno))};
}

std::optional<NotWritten> WrittenFiles::write_one(const Folder& folder, const NewFile& file) {
  std::FILE* out = std::fopen((folder.hidden / file.name).c_str(), "wbx");
  if (out == nullptr) return failed(folder.path / file.name, errno);
  const bool whole = std::fwrite(file.text.data(), 1, file.text.size(), out) == file.text.size();
  const int error = errno;
  if (std::fclose(out) != 0) return failed(folder.path / file.name, errno);
  return whole ? std::nullopt : std::optional(failed(folder.path / file.name, error));
}

std::optional<NotWritten> WrittenFiles::write(const std::string& folder_path,
                                              const std::vector<NewFile>& files) {
  Folder& folder = folders_.emplace_back();
  folder.path = folder_path;
  for (const NewFile& file : files) folder.names.push_back(file.name);
  if (auto why = refusal(folder_path, folder.names)) return why;
  if (auto why = make(folder)) return why;
  std::string hidden = (folder.path / ".wattweek-XXXXXX").string();
  if (mkdtemp(hidden.data()) == nullptr) return failed(folder.path / files.front().name, errno);
  folder.hidden = hidden;
  for (const NewFile& file : files) {
    if (auto why = write_one(folder, file)) return why;
  }
  return std::nullopt;
}

fs::path WrittenFiles::hidden_path(const std::string& name) const {
  return folders_.back().hidden / name;
}

void WrittenFiles::expect(const std::string& name) {
  std::vector<std::string>& names = folders_.back().names;
  names.insert(names.begin(), name);
}

std::optional<NotWritten> WrittenFiles::place(const Folder& folder, const std::string& name) {
  const fs::path from = folder.hidden / name;
  const fs::path to = folder.path / name;
  int error = rename_without_replacing(from, to);
  fs::path former;
  if (error == EEXIST) {
    if (!replacing_.is_allowed(to)) return taken(fmt::format("'{}'", shown(to)));
    // No file of ours ends like this, and the folder goes away with what is in it.
    former = folder.hidden / (name + ".former");
    error = keep(to, former);
    if (error == 0) {
      placed_.push_back({to, former});
      error = std::rename(from.c_str(), to.c_str()) == 0 ? 0 : errno;
    }
  } else if (error == 0) {
    placed_.push_back({to, former});
  }
  if (error != 0) return failed(to, error);
  return std::nullopt;
}

std::optional<NotWritten> WrittenFiles::finish() {
  for (const Folder& folder : folders_) {
    for (const std::string& name : folder.names) {
      if (auto why = place(folder, name)) return why;
    }
  }
  placed_.clear();
  for (Folder& folder : folders_) folder.is_made_here = false;
  return std::nullopt;
}

}  // namespace wattweek::cli
