#pragma once
// The built program, run as a user runs it: through a shell.

#include <doctest/doctest.h>
#include <sys/wait.h>
#include <unistd.h>

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>

namespace wattweek::cli {

/// An empty folder that goes away with its owner.
class TemporaryFolder {
 public:
  TemporaryFolder() {
    std::string pattern = (std::filesystem::temp_directory_path() / "wattweek-XXXXXX").string();
    REQUIRE(mkdtemp(pattern.data()) != nullptr);
    path_ = pattern;
  }
  ~TemporaryFolder() {
    std::error_code ignored;
    std::filesystem::remove_all(path_, ignored);
  }
  TemporaryFolder(const TemporaryFolder&) = delete;
  TemporaryFolder& operator=(const TemporaryFolder&) = delete;

  const std::filesystem::path& path() const { return path_; }

  void write(const std::string& name, const std::string& text) const {
    std::filesystem::create_directories((path_ / name).parent_path());
    std::ofstream(path_ / name, std::ios::binary) << text;
  }

 private:
  std::filesystem::path path_;
};

inline std::string text_of(const std::filesystem::path& path) {
  std::ifstream in(path, std::ios::binary);
  REQUIRE_MESSAGE(in.good(), path.string());
  return {std::istreambuf_iterator<char>(in), {}};
}

struct Run {
  int exit_code = -1;
  std::string out;
  std::string err;
};

/// Runs a shell command in `folder`, in which `wattweek` is the built program. Where `command`
/// does not redirect its output it is caught.
inline Run shell(const std::filesystem::path& folder, const std::string& command) {
  const TemporaryFolder caught;
  const std::string out = (caught.path() / "out").string();
  const std::string err = (caught.path() / "err").string();
  const std::string whole = "cd '" + folder.string() +
                            "' && wattweek() { '" WATTWEEK_PROGRAM "' \"$@\"; } && { " + command +
                            "; } >'" + out + "' 2>'" + err + "' </dev/null";
  const int status = std::system(whole.c_str());
  REQUIRE(WIFEXITED(status));
  return {WEXITSTATUS(status), text_of(out), text_of(err)};
}

/// Runs the program in the root of the source tree, so that paths read as in the documentation.
inline Run wattweek(const std::string& words) {
  return shell(WATTWEEK_SOURCE_DIR, "wattweek " + words);
}

}  // namespace wattweek::cli
