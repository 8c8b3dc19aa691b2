#include "cli/written_files.hpp"

#include <sys/stat.h>

#include "cli/outcome.hpp"
#include "program.hpp"

namespace wattweek::cli {
namespace {

namespace fs = std::filesystem;

const std::vector<NewFile> kTwo = {{"a.toml", "first\n"}, {"b.toml", "second\n"}};

std::ptrdiff_t count_in(const fs::path& folder) {
  return std::distance(fs::directory_iterator(folder), {});
}

TEST_CASE("written files: all have their names and texts once they are finished, not before") {
  const TemporaryFolder folder;
  const fs::path home = folder.path() / "home";
  WrittenFiles files("name another folder");
  REQUIRE_FALSE(files.write(home.string(), kTwo));
  CHECK_FALSE(fs::exists(home / "a.toml"));
  REQUIRE_FALSE(files.finish());
  CHECK(text_of(home / "a.toml") == "first\n");
  CHECK(text_of(home / "b.toml") == "second\n");
}

TEST_CASE("written files: nothing but the files is left, with the rights that a new file has") {
  const TemporaryFolder folder;
  const mode_t before = umask(027);
  {
    WrittenFiles files("name another folder");
    REQUIRE_FALSE(files.write((folder.path() / "home").string(), kTwo));
    REQUIRE_FALSE(files.finish());
  }
  umask(before);
  CHECK(count_in(folder.path() / "home") == 2);
  CHECK(fs::status(folder.path() / "home/a.toml").permissions() == fs::perms(0640));
  CHECK(fs::status(folder.path() / "home").permissions() == fs::perms(0750));
}

TEST_CASE("written files: what is not finished goes away, and the folder with it") {
  const TemporaryFolder folder;
  {
    WrittenFiles files("name another folder");
    REQUIRE_FALSE(files.write((folder.path() / "home").string(), kTwo));
  }
  CHECK(fs::is_empty(folder.path()));
  fs::create_directory(folder.path() / "home");
  {
    WrittenFiles files("name another folder");
    REQUIRE_FALSE(files.write((folder.path() / "home").string(), kTwo));
  }
  CHECK(fs::is_empty(folder.path() / "home"));
}

TEST_CASE("written files: somebody who takes a name in the meantime keeps it, and none is added") {
  const TemporaryFolder folder;
  const std::string other = (folder.path() / "b.toml").string();
  {
    WrittenFiles files("name another folder");
    REQUIRE_FALSE(files.write(folder.path().string(), kTwo));
    folder.write("b.toml", "theirs\n");
    const auto why = files.finish();
    REQUIRE(why);
    CHECK(why->exit_code == kWrongInput);
    CHECK(why->reason ==
          "there is '" + other + "' already, and nothing is overwritten; name another folder");
  }
  CHECK(text_of(other) == "theirs\n");
  CHECK(count_in(folder.path()) == 1);
}

TEST_CASE("written files: a file that is there is replaced where that was asked for") {
  const TemporaryFolder folder;
  folder.write("b.toml", "theirs\n");
  {
    WrittenFiles files("name another folder", Existing::replace);
    REQUIRE_FALSE(files.write(folder.path().string(), kTwo));
    CHECK(text_of(folder.path() / "b.toml") == "theirs\n");
    REQUIRE_FALSE(files.finish());
  }
  CHECK(text_of(folder.path() / "b.toml") == "second\n");
  CHECK(count_in(folder.path()) == 2);
}

TEST_CASE("written files: a link is replaced, and what it leads to stays") {
  const TemporaryFolder folder;
  folder.write("mine.txt", "mine\n");
  fs::create_symlink("mine.txt", folder.path() / "a.toml");
  WrittenFiles files("name another folder", Existing::replace);
  REQUIRE_FALSE(files.write(folder.path().string(), kTwo));
  REQUIRE_FALSE(files.finish());
  CHECK_FALSE(fs::is_symlink(folder.path() / "a.toml"));
  CHECK(text_of(folder.path() / "a.toml") == "first\n");
  CHECK(text_of(folder.path() / "mine.txt") == "mine\n");
}

TEST_CASE("written files: in several folders all get their names or none, and what was is back") {
  const TemporaryFolder folder;
  folder.write("a.toml", "old\n");
  {
    WrittenFiles files("name another folder", Existing::replace);
    REQUIRE_FALSE(files.write(folder.path().string(), {{"a.toml", "new\n"}, {"c.toml", "c\n"}}));
    REQUIRE_FALSE(files.write((folder.path() / "home").string(), kTwo));
    fs::create_directory(folder.path() / "home/b.toml");
    const auto why = files.finish();
    REQUIRE(why);
    CHECK(why->exit_code == kWrongInput);
  }
  CHECK(text_of(folder.path() / "a.toml") == "old\n");
  CHECK_FALSE(fs::exists(folder.path() / "c.toml"));
  CHECK_FALSE(fs::exists(folder.path() / "home/a.toml"));
  CHECK(count_in(folder.path()) == 2);
}

TEST_CASE("written files: a file that another program writes gets its name like the others") {
  const TemporaryFolder folder;
  WrittenFiles files("name another folder");
  REQUIRE_FALSE(files.write(folder.path().string(), kTwo));
  files.expect("c.png");
  std::ofstream(files.hidden_path("c.png")) << "third\n";
  CHECK(text_of(files.hidden_path("a.toml")) == "first\n");
  REQUIRE_FALSE(files.finish());
  CHECK(text_of(folder.path() / "c.png") == "third\n");
  CHECK(text_of(folder.path() / "b.toml") == "second\n");
}

TEST_CASE("written files: who says which files are replaced is asked for each") {
  const TemporaryFolder folder;
  folder.write("a.toml", "mine\n");
  folder.write("b.toml", "theirs\n");
  WrittenFiles files(Replacing{[](const fs::path& path) { return path.filename() == "a.toml"; },
                               "it stays; name another"});
  const auto why = files.write(folder.path().string(), kTwo);
  REQUIRE(why);
  CHECK(why->reason == "there is '" + (folder.path() / "b.toml").string() +
                           "' already, and it stays; name another");
  CHECK(text_of(folder.path() / "a.toml") == "mine\n");
}

TEST_CASE("written files: a folder is never replaced") {
  const TemporaryFolder folder;
  fs::create_directory(folder.path() / "a.toml");
  WrittenFiles files("name another folder", Existing::replace);
  const auto why = files.write(folder.path().string(), kTwo);
  REQUIRE(why);
  CHECK(why->exit_code == kWrongInput);
  CHECK(fs::is_directory(folder.path() / "a.toml"));
}

}  // namespace
}  // namespace wattweek::cli
