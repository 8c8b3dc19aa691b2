#include "cli/log_file.hpp"

#include <array>

#include "program.hpp"

namespace wattweek::cli {
namespace {

logs::LogFile opened(const TemporaryFolder& folder) {
  auto file = log_file((folder.path() / "log.csv").string());
  REQUIRE(std::holds_alternative<logs::LogFile>(file));
  return std::get<logs::LogFile>(std::move(file));
}

std::string rest_of(logs::ByteSource& source) {
  std::array<char, 3> piece{};
  std::string all;
  while (const std::size_t got = source.read(piece)) all.append(piece.data(), got);
  return all;
}

constexpr const char* kChanged = "the file changed while it was read; fit a copy of it";

TEST_CASE("log files: their size is known, and they can be read as often as needed") {
  const TemporaryFolder folder;
  folder.write("log.csv", "a,b\n1,2\n");
  const logs::LogFile file = opened(folder);
  CHECK(file.bytes == 8);
  for (int time = 0; time < 2; ++time) {
    const auto source = file.open();
    CHECK(rest_of(*source) == "a,b\n1,2\n");
    CHECK(source->failure() == "");
  }
}

TEST_CASE("log files: one that grows while it is read is told, and read no further") {
  const TemporaryFolder folder;
  folder.write("log.csv", "a,b\n1,2\n");
  const auto source = opened(folder).open();
  folder.write("log.csv", "a,b\n1,2\n3,4\n");
  CHECK(rest_of(*source) == "a,b\n1,2\n");
  CHECK(source->failure() == kChanged);
}

TEST_CASE("log files: one that shrinks while it is read is told") {
  const TemporaryFolder folder;
  folder.write("log.csv", "a,b\n1,2\n");
  const auto source = opened(folder).open();
  folder.write("log.csv", "a,b\n");
  CHECK(rest_of(*source) == "a,b\n");
  CHECK(source->failure() == kChanged);
}

TEST_CASE("log files: one that goes away before it is opened says why") {
  const TemporaryFolder folder;
  folder.write("log.csv", "a,b\n1,2\n");
  const logs::LogFile file = opened(folder);
  std::filesystem::remove(folder.path() / "log.csv");
  const auto source = file.open();
  CHECK(rest_of(*source) == "");
  CHECK(source->failure() == "the file cannot be opened: No such file or directory");
}

}  // namespace
}  // namespace wattweek::cli
