#pragma once
// New files, all of them or none, and in place of others only where that was asked for.

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

namespace wattweek::cli {

struct NewFile {
  std::string name;
  std::string text;
};

/// What is done about a file that stands under the name of a new one.
enum class Existing { refuse, replace };

/// Why nothing was written, and the exit code that says whose fault it is.
struct NotWritten {
  int exit_code;
  std::string reason;
};

/// Files on their way into a folder: first written whole under other names, then all renamed.
/// Whatever is not finished when this goes away is removed, the folder too if it was made here.
class WrittenFiles {
 public:
  /// `advice`: what the user may do where a name is taken, such as "name another folder".
  explicit WrittenFiles(std::string advice, Existing existing = Existing::refuse)
      : advice_(std::move(advice)), existing_(existing) {}
  ~WrittenFiles();
  WrittenFiles(const WrittenFiles&) = delete;
  WrittenFiles& operator=(const WrittenFiles&) = delete;

  /// Why files of these names could not be written there as it is now: their names are taken.
  std::optional<NotWritten> refusal(const std::string& folder,
                                    const std::vector<std::string>& names) const;

  /// Writes the files whole, not yet under their names. Makes the folder where there is none, but
  /// not the folder above it. Refuses where one of the names is taken. To be called once.
  std::optional<NotWritten> write(const std::string& folder, const std::vector<NewFile>& files);

  /// Gives the files their names, unless somebody took one of these in the meantime; where others
  /// are to be replaced, each in one step.
  std::optional<NotWritten> finish();

 private:
  std::optional<NotWritten> make_folder();
  std::optional<NotWritten> write_one(const NewFile& file) const;

  NotWritten taken(const std::string& paths) const;

  std::string advice_;
  Existing existing_;
  std::filesystem::path folder_;
  std::filesystem::path hidden_;  ///< A folder of our own in `folder_`; empty: not made yet.
  std::vector<std::string> names_;
  std::vector<std::filesystem::path> placed_;  ///< What stands under its name already.
  bool made_folder_ = false;
};

}  // namespace wattweek::cli
