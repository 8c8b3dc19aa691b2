#pragma once
// New files, all of them or none, and in place of others only where that was asked for.

#include <filesystem>
#include <functional>
#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace wattweek::cli {

struct NewFile {
  std::string name;
  std::string text;
};

/// What is done about a file that stands under the name of a new one.
enum class Existing { refuse, replace };

/// Which files that stand under the names of new ones are replaced, and what is said of others.
struct Replacing {
  std::function<bool(const std::filesystem::path& path)> is_allowed;
  std::string advice;  ///< Behind `there is 'FILE' already, and`.
};

/// Why nothing was written, and the exit code that says whose fault it is.
struct NotWritten {
  int exit_code;
  std::string reason;
};

/// Files on their way into one folder or several: first written whole under other names, then all
/// renamed. Whatever is not finished when this goes away is removed, a folder too if it was made
/// here, and files that were to be replaced are what they were.
class WrittenFiles {
 public:
  /// `advice`: what the user may do where a name is taken, such as "name another folder".
  explicit WrittenFiles(const std::string& advice, Existing existing = Existing::refuse);
  explicit WrittenFiles(Replacing replacing) : replacing_(std::move(replacing)) {}
  ~WrittenFiles();
  WrittenFiles(const WrittenFiles&) = delete;
  WrittenFiles& operator=(const WrittenFiles&) = delete;

  /// Why the folder could be neither used nor made, as things are now.
  static std::optional<NotWritten> why_no_folder(const std::filesystem::path& folder);

  /// Why files of these names could not be written there as it is now: their names are taken.
  std::optional<NotWritten> refusal(const std::string& folder,
                                    const std::vector<std::string>& names) const;

  /// Writes the files whole, not yet under their names. Makes the folder where there is none, but
  /// not the folder above it. Refuses where one of the names is taken. Once for each folder.
  std::optional<NotWritten> write(const std::string& folder, const std::vector<NewFile>& files);

  /// Where the last folder's file of this name lies until `finish`.
  std::filesystem::path hidden_path(const std::string& name) const;

  /// The last folder will have a file of this name too: another program writes it at
  /// `hidden_path` before `finish`, where it gets its name before all others of the folder. To be
  /// asked for with `refusal` first.
  void expect(const std::string& name);

  /// Gives the files their names, unless somebody took one of these in the meantime; where others
  /// are to be replaced, each in one step.
  std::optional<NotWritten> finish();

 private:
  struct Folder {
    std::filesystem::path path;
    std::filesystem::path hidden;  ///< A folder of our own in it; empty: not made yet.
    std::vector<std::string> names;
    bool is_made_here = false;
  };
  /// What stands under its name already.
  struct Placed {
    std::filesystem::path path;
    std::filesystem::path former;  ///< Where the file that it replaced is; empty: there was none.
  };

  static std::optional<NotWritten> make(Folder& folder);
  static std::optional<NotWritten> write_one(const Folder& folder, const NewFile& file);
  std::optional<NotWritten> place(const Folder& folder, const std::string& name);
  NotWritten taken(const std::string& paths) const;

  Replacing replacing_;
  std::vector<Folder> folders_;
  std::vector<Placed> placed_;
};

}  // namespace wattweek::cli
