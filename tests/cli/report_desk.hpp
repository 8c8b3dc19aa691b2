#pragma once
// `report` on a small study, with or without a program that makes PNGs.

#include "program.hpp"
#include "small_study.hpp"
#include "wattweek/report/page.hpp"

namespace wattweek::cli {

/// What stands in for the converter: writes `dots` where it is told to.
inline const std::string kDots =
    "#!/bin/sh\nwhile [ $# -gt 1 ]; do [ \"$1\" = --output ] && out=$2; shift; done\n"
    "printf dots >\"$out\"\n";

class ReportDesk {
 public:
  ReportDesk() { write("study.toml", small_study_with("purchase = 200\n", "")); }

  const std::filesystem::path& path() const { return folder_.path(); }
  void write(const std::string& name, const std::string& text) const { folder_.write(name, text); }
  std::string read(const std::string& name) const { return text_of(path() / name); }
  bool has(const std::string& name) const { return std::filesystem::exists(path() / name); }

  /// A converter that is this script, the only program on the PATH but those of the system.
  void set_converter(const std::string& script) {
    write("bin/rsvg-convert", script);
    std::filesystem::permissions(path() / "bin/rsvg-convert", std::filesystem::perms(0755));
    path_ = path().string() + "/bin:/bin:/usr/bin";
  }

  /// `report study.toml` with these words.
  Run run(const std::string& words) const { return words_run("report study.toml " + words); }

  Run words_run(const std::string& words) const {
    return shell(path(), "export PATH='" + path_ + "'; wattweek " + words);
  }

 private:
  TemporaryFolder folder_;
  std::string path_;  ///< Nothing is on it, at first.
};

inline std::string refusal(const std::string& message) {
  return "wattweek: error: " + message + "\n";
}

}  // namespace wattweek::cli
