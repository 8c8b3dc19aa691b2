#include "new_home.hpp"

#include <doctest/doctest.h>

namespace wattweek::cli {

Run made(const TemporaryFolder& folder, const std::string& words) {
  Run run = shell(folder.path(), "export TZ=Etc/UTC; wattweek new home " + words);
  CHECK(run.exit_code == 0);
  return run;
}

std::string file(const TemporaryFolder& folder, const std::string& name) {
  return text_of(folder.path() / "home" / name);
}

bool has_line(const std::string& text, const std::string& line) {
  return ('\n' + text).find('\n' + line + '\n') != std::string::npos;
}

}  // namespace wattweek::cli
