// Every study, profile and tariff of the frozen samples is read without a problem.
#include <filesystem>
#include <fstream>
#include <sstream>

#include "support.hpp"

using namespace wattweek;
using namespace wattweek::read_tests;
namespace fs = std::filesystem;

namespace {

std::string text_of(const fs::path& path) {
  std::stringstream text;
  text << std::ifstream(path, std::ios::binary).rdbuf();
  return text.str();
}

read::SourceText source_of(const fs::path& path) {
  return {path.string(), fs::weakly_canonical(path).string(), text_of(path)};
}

read::Surroundings on_disk() {
  using Loaded = std::variant<read::SourceText, read::Unreadable>;
  const auto load = [](const std::string& path, const std::string& from,
                       read::ShippedKind) -> Loaded {
    return source_of(fs::path(from).parent_path() / path);
  };
  const auto zone = [](const std::string& name, std::chrono::year_month first, int months) {
    return calendar::zone_rules(name, first, months);
  };
  return {load, zone};
}

std::string problems_of(const read::SourceText& source) {
  switch (value_of(read::kind_of(source))) {
    case read::FileKind::study:
      return shown(read::study(source, on_disk()).problems);
    case read::FileKind::profile:
      return shown(read::profile(source).problems);
    case read::FileKind::tariff:
      return shown(read::tariff(source).problems);
  }
  return "no kind";
}

}  // namespace

TEST_CASE("all samples are read without a problem") {
  int files = 0;
  for (const auto& entry :
       fs::recursive_directory_iterator(fs::path(WATTWEEK_SOURCE_DIR) / "tests" / "samples")) {
    if (entry.path().extension() != ".toml") continue;
    CAPTURE(entry.path());
    CHECK(problems_of(source_of(entry.path())) == "");
    ++files;
  }
  CHECK(files >= 29);
}
