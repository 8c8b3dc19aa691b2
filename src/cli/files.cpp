#include "cli/files.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cerrno>
#include <cstdio>
#include <cstring>
#include <filesystem>
#include <memory>
#include <optional>
#include <system_error>

#include "wattweek/calendar/zone_database.hpp"
#include "wattweek/diag/diagnostic.hpp"

namespace wattweek::cli {
namespace {

namespace fs = std::filesystem;
using Loaded = std::variant<read::SourceText, read::Unreadable>;

constexpr std::size_t kMostBytes = std::size_t{16} << 20U;
constexpr std::string_view kShipped = "shipped:";

read::Unreadable unreadable(const std::string& path, std::string_view why) {
  return {fmt::format("'{}' {}", path, why)};
}

/// The whole text, `kMostBytes` + 1 bytes of it at most.
std::variant<std::string, read::Unreadable> content(const std::string& path) {
  const std::unique_ptr<std::FILE, int (*)(std::FILE*)> file(std::fopen(path.c_str(), "rb"),
                                                             std::fclose);
  if (!file) return unreadable(path, fmt::format("cannot be opened: {}", std::strerror(errno)));
  std::string text;
  std::string piece(std::size_t{1} << 16U, '\0');
  while (text.size() <= kMostBytes) {
    const std::size_t count = std::fread(piece.data(), 1, piece.size(), file.get());
    if (count == 0) break;
    text.append(piece, 0, count);
  }
  if (std::ferror(file.get()) != 0) {
    return unreadable(path, fmt::format("cannot be read: {}", std::strerror(errno)));
  }
  if (text.size() > kMostBytes) return unreadable(path, "is larger than 16 MiB");
  return text;
}

/// The folders in which shipped files of a kind can lie: in the build tree, and installed.
std::vector<fs::path> shipped_folders(read::ShippedKind kind) {
  std::error_code problem;
  const fs::path program = fs::read_symlink("/proc/self/exe", problem).parent_path();
  const fs::path share = fs::path("share") / "wattweek" /
                         (kind == read::ShippedKind::profile ? "profiles" : "tariffs");
  return {program / share, program.parent_path() / share};
}

std::vector<std::string> names_in(const std::vector<fs::path>& folders) {
  std::vector<std::string> names;
  for (const fs::path& folder : folders) {
    std::error_code problem;
    for (const auto& entry : fs::directory_iterator(folder, problem)) {
      if (entry.path().extension() == ".toml") names.push_back(entry.path().stem().string());
    }
  }
  std::sort(names.begin(), names.end());
  names.erase(std::unique(names.begin(), names.end()), names.end());
  return names;
}

read::Unreadable nothing_shipped(const std::string& name, read::ShippedKind kind,
                                 const std::vector<std::string>& names) {
  const char* word = kind == read::ShippedKind::profile ? "profile" : "tariff";
  if (names.empty()) {
    return {fmt::format("'shipped:{}' cannot be found: the folder of shipped {}s is missing", name,
                        word)};
  }
  const std::vector<std::string_view> known(names.begin(), names.end());
  std::string text = fmt::format("no {} '{}' ships with wattweek", word, name);
  const std::string_view near = diag::nearest(name, known);
  if (!near.empty()) text += fmt::format("; did you mean 'shipped:{}'?", near);
  constexpr std::size_t kSome = 8;
  const std::size_t shown = std::min(known.size(), kSome);
  text += near.empty() ? "; there are " : " There are ";
  for (std::size_t i = 0; i < shown; ++i) text += (i > 0 ? ", " : "") + names[i];
  if (shown < known.size()) text += fmt::format(" and {} more", known.size() - shown);
  return {text};
}

Loaded load_shipped(const std::string& name, read::ShippedKind kind) {
  constexpr std::string_view kLetters = "abcdefghijklmnopqrstuvwxyz0123456789-";
  const std::vector<fs::path> folders = shipped_folders(kind);
  const bool well_formed = !name.empty() && name.find_first_not_of(kLetters) == std::string::npos;
  for (const fs::path& folder : folders) {
    const fs::path path = folder / (name + ".toml");
    std::error_code problem;
    if (well_formed && fs::exists(path, problem)) return read_file(path.string());
  }
  return nothing_shipped(name, kind, names_in(folders));
}

Loaded load(const std::string& path, const std::string& from, read::ShippedKind kind) {
  if (path.compare(0, kShipped.size(), kShipped) == 0) {
    return load_shipped(path.substr(kShipped.size()), kind);
  }
  if (path.empty()) return read_file(path);
  return read_file((fs::path(from).parent_path() / path).string());
}

}  // namespace

std::optional<read::Unreadable> why_not_to_open(const std::string& path) {
  if (path.empty()) return read::Unreadable{"an empty path names no file"};
  if (path.find('\0') != std::string::npos) return unreadable(path, "holds a zero byte");
  std::error_code problem;
  const fs::file_status status = fs::status(path, problem);
  if (status.type() == fs::file_type::not_found) return unreadable(path, "does not exist");
  if (problem) return unreadable(path, "cannot be reached: " + problem.message());
  if (fs::is_directory(status)) return unreadable(path, "is a folder, not a file");
  if (!fs::is_regular_file(status)) return unreadable(path, "is not a regular file");
  return std::nullopt;
}

Loaded read_file(const std::string& path) {
  if (std::optional<read::Unreadable> why = why_not_to_open(path)) return *why;
  std::error_code no_size;
  if (fs::file_size(path, no_size) > kMostBytes && !no_size) {
    return unreadable(path, "is larger than 16 MiB");
  }
  auto text = content(path);
  if (const auto* why = std::get_if<read::Unreadable>(&text)) return *why;
  std::error_code problem;
  const fs::path identity = fs::canonical(path, problem);
  return read::SourceText{path, problem ? path : identity.string(),
                          std::get<std::string>(std::move(text))};
}

std::vector<std::string> shipped_names(read::ShippedKind kind) {
  return names_in(shipped_folders(kind));
}

read::Surroundings surroundings() { return {load, calendar::zone_rules}; }

void add_once(Sources& sources, read::SourceText source) {
  const bool is_known = std::any_of(sources.begin(), sources.end(), [&source](const auto& each) {
    return each.identity == source.identity;
  });
  if (!is_known) sources.push_back(std::move(source));
}

read::Surroundings surroundings_noted_in(Sources* sources) {
  if (sources == nullptr) return surroundings();
  const auto noted = [sources](const std::string& path, const std::string& from,
                               read::ShippedKind kind) {
    Loaded loaded = load(path, from, kind);
    if (const auto* source = std::get_if<read::SourceText>(&loaded)) {
      read::SourceText copy = *source;
      if (path.compare(0, kShipped.size(), kShipped) == 0) copy.name = path;
      add_once(*sources, std::move(copy));
    }
    return loaded;
  };
  return {noted, calendar::zone_rules};
}

}  // namespace wattweek::cli
