// What `report` replaces, and what it does not.

#include "report_desk.hpp"

namespace wattweek::cli {
namespace {

namespace fs = std::filesystem;

const std::string kTheirs = "mine, and nobody else's\n";

std::string not_ours(const std::string& path) {
  return "there is '" + path +
         "' already, and it is not from an earlier report of this kind; say --force to replace it, "
         "or name another one";
}

std::string never(const std::string& path) {
  return "there is '" + path +
         "' already, and it is no file that may be replaced; name another one";
}

/// Refused with this message, exit code 2 and nothing on standard output.
void check_refused(const Run& run, const std::string& message) {
  CHECK(run.err == refusal(message));
  CHECK(run.exit_code == 2);
  CHECK(run.out == "");
}

/// The name of some picture, without its ending.
std::string a_picture(const ReportDesk& desk) {
  REQUIRE(desk.run("-o - --pictures some").exit_code == 0);
  const std::string name = fs::directory_iterator(desk.path() / "some")->path().stem().string();
  fs::remove_all(desk.path() / "some");
  return name;
}

TEST_CASE("report: an earlier report of the same kind is replaced, any other file with --force") {
  const ReportDesk desk;
  REQUIRE(desk.run("-o report.html").exit_code == 0);
  CHECK(desk.run("-o report.html --years 3").exit_code == 0);
  check_refused(desk.run("-o report.html --format markdown"),
                "--output: " + not_ours("report.html"));
  desk.write("theirs.html", kTheirs);
  check_refused(desk.run("-o theirs.html"), "--output: " + not_ours("theirs.html"));
  CHECK(desk.read("theirs.html") == kTheirs);
  CHECK(desk.run("-o theirs.html --force --years 3").exit_code == 0);
  CHECK(desk.read("theirs.html") == desk.read("report.html"));
}

TEST_CASE("report: no folder, device or link to such is replaced, with --force neither") {
  const ReportDesk desk;
  fs::create_directory(desk.path() / "dir");
  fs::create_symlink("/dev/null", desk.path() / "link");
  fs::create_symlink("nowhere", desk.path() / "loose");
  for (const std::string force : {"", " --force"}) {
    check_refused(desk.run("-o dir" + force), "--output: 'dir' is a folder, not a file");
    check_refused(desk.run("-o ." + force), "--output: '.' is a folder, not a file");
    check_refused(desk.run("-o link" + force), "--output: 'link' is not a regular file");
    check_refused(desk.run("-o /dev/null" + force), "--output: '/dev/null' is not a regular file");
  }
  check_refused(desk.run("-o loose --force"), "--output: " + never("loose"));
  CHECK(fs::is_symlink(desk.path() / "link"));
}

TEST_CASE("report: a link to an earlier report is replaced, what it leads to stays") {
  const ReportDesk desk;
  REQUIRE(desk.run("-o old.html").exit_code == 0);
  const std::string old = desk.read("old.html");
  fs::create_symlink("old.html", desk.path() / "report.html");
  CHECK(desk.run("-o report.html --years 3").exit_code == 0);
  CHECK_FALSE(fs::is_symlink(desk.path() / "report.html"));
  CHECK(desk.read("old.html") == old);
}

TEST_CASE("report: what it is made from is never overwritten, however it is named") {
  const ReportDesk desk;
  const std::string study = desk.read("study.toml");
  fs::create_symlink("study.toml", desk.path() / "link.toml");
  for (const std::string name : {"study.toml", "./study.toml", "link.toml"}) {
    for (const std::string force : {"", " --force"}) {
      check_refused(desk.run("-o " + name + force),
                    "--output: '" + name + "' is what the report is made from; name another file");
    }
  }
  CHECK(desk.read("study.toml") == study);
}

TEST_CASE("report: a file's name and a folder that is there are needed") {
  const ReportDesk desk;
  for (const std::string name : {"", "out/"}) {
    check_refused(
        desk.run("-o '" + name + "'"),
        "--output: found '" + name + "', accepted is a file's name, or - for standard output");
  }
  check_refused(desk.run("-o a/b/report.html"),
                "--output: 'a/b/report.html' cannot be written: there is no folder 'a/b'");
  check_refused(desk.run("-o study.toml/report.html"),
                "--output: 'study.toml/report.html' cannot be written: there is no folder "
                "'study.toml'");
  check_refused(desk.run("-o report.html --pictures a/b"),
                "--pictures: the folder 'a/b' cannot be made: there is no folder above it");
  check_refused(desk.run("-o report.html --pictures study.toml"),
                "--pictures: 'study.toml' is not a folder");
  check_refused(desk.run("-o report.html --pictures ''"),
                "--pictures: an empty path names no folder");
  check_refused(desk.run("-o out --pictures ./out/"),
                "--pictures: './out/' is the file of --output; name another folder");
  CHECK(std::distance(fs::directory_iterator(desk.path()), {}) == 1);
}

TEST_CASE("report: earlier pictures are replaced, and dots only beside them") {
  ReportDesk desk;
  const std::string name = "pics/" + a_picture(desk);
  desk.set_converter(kDots);
  const std::string words = "-o report.html --pictures pics";
  REQUIRE(desk.run(words).exit_code == 0);
  CHECK(desk.run(words).exit_code == 0);
  desk.write(name + ".svg", kTheirs);
  check_refused(desk.run(words),
                "--pictures: there is '" + name + ".svg', '" + name +
                    ".png' already, and it is not from an earlier report of this kind; say --force "
                    "to replace it, or name another one");
  fs::remove(desk.path() / (name + ".svg"));
  check_refused(desk.run(words), "--pictures: " + not_ours(name + ".png"));
  CHECK_FALSE(desk.has(name + ".svg"));
  CHECK(desk.run(words + " --force").exit_code == 0);
  CHECK(desk.read(name + ".svg") != kTheirs);
}

TEST_CASE("report: the page takes no picture's name") {
  const ReportDesk desk;
  const std::string name = a_picture(desk);
  fs::create_directory(desk.path() / "pics");
  for (const std::string force : {"", " --force"}) {
    check_refused(
        desk.run("-o pics/" + name + ".svg --pictures ./pics" + force),
        "--output: 'pics/" + name + ".svg' is the name of a picture too; name another file");
  }
  CHECK(fs::is_empty(desk.path() / "pics"));
}

TEST_CASE(
    "report: pictures that cannot be placed take the page with them, and the old one is back") {
  const ReportDesk desk;
  const std::string name = a_picture(desk);
  REQUIRE(desk.run("-o report.html").exit_code == 0);
  const std::string old = desk.read("report.html");
  fs::create_directories(desk.path() / "pics" / (name + ".svg"));
  check_refused(desk.run("-o report.html --years 3 --pictures pics --force"),
                "--pictures: " + never("pics/" + name + ".svg"));
  CHECK(desk.read("report.html") == old);
}

}  // namespace
}  // namespace wattweek::cli
