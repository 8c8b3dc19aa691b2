#pragma once
// `fit` on the log of the examples.

#include "program.hpp"

namespace wattweek::cli {

inline const std::string kLog = "docs/examples/plug-log.csv";
inline const std::string kFit = "fit " + kLog + " --zone Europe/Dublin";
inline const std::string kActivity = " --activity docs/examples/plug-activity.csv";

/// A folder with the example's files beside it.
class Desk {
 public:
  Desk() {
    std::filesystem::create_directory_symlink(WATTWEEK_SOURCE_DIR "/docs", path() / "docs");
  }
  const std::filesystem::path& path() const { return folder_.path(); }
  void write(const std::string& name, const std::string& text) const { folder_.write(name, text); }
  std::string read(const std::string& name) const { return text_of(path() / name); }
  bool has(const std::string& name) const { return std::filesystem::exists(path() / name); }
  Run run(const std::string& words) const { return shell(path(), "wattweek " + words); }

 private:
  TemporaryFolder folder_;
};

}  // namespace wattweek::cli
