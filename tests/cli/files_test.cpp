#include <sys/stat.h>

#include "program.hpp"
#include "small_study.hpp"

namespace wattweek::cli {
namespace {

namespace fs = std::filesystem;

/// The error of a command that must fail with exit code 2 and print nothing else.
std::string refusal(const TemporaryFolder& folder, const std::string& command) {
  const Run run = shell(folder.path(), command);
  CHECK(run.exit_code == 2);
  CHECK(run.out == "");
  return run.err;
}

TEST_CASE("files: a path that leads nowhere, to a folder or to a device is refused") {
  const TemporaryFolder folder;
  fs::create_directory(folder.path() / "folder");
  CHECK(refusal(folder, "wattweek estimate none.toml") ==
        "wattweek: error: 'none.toml' does not exist\n");
  CHECK(refusal(folder, "wattweek compare folder") ==
        "wattweek: error: 'folder' is a folder, not a file\n");
  CHECK(refusal(folder, "wattweek estimate /dev/zero") ==
        "wattweek: error: '/dev/zero' is not a regular file\n");
  CHECK(refusal(folder, "wattweek estimate ''") ==
        "wattweek: error: an empty path names no file\n");
}

TEST_CASE("files: a pipe that nobody writes to is refused at once") {
  const TemporaryFolder folder;
  REQUIRE(mkfifo((folder.path() / "pipe.toml").c_str(), 0600) == 0);
  CHECK(refusal(folder, "wattweek check pipe.toml") ==
        "wattweek: error: 'pipe.toml' is not a regular file\n");
}

TEST_CASE("files: a file of 100 MB is refused unread") {
  const TemporaryFolder folder;
  folder.write("large.toml", "");
  fs::resize_file(folder.path() / "large.toml", 100'000'000);
  CHECK(refusal(folder, "wattweek check large.toml") ==
        "wattweek: error: 'large.toml' is larger than 16 MiB\n");
}

TEST_CASE("files: a file without permission to read is refused") {
  if (geteuid() == 0) return;  // Nothing is forbidden to root.
  const TemporaryFolder folder;
  folder.write("secret.toml", kSmallStudy);
  fs::permissions(folder.path() / "secret.toml", fs::perms::none);
  CHECK(refusal(folder, "wattweek check secret.toml") ==
        "wattweek: error: 'secret.toml' cannot be opened: Permission denied\n");
}

TEST_CASE("files: binary, empty and one-sided files end in a message") {
  const TemporaryFolder folder;
  folder.write("zeros.toml", std::string(1000, '\0'));
  folder.write("bytes.toml", "\xFF\xFE\x80title");
  folder.write("empty.toml", "");
  for (const char* name : {"zeros.toml", "bytes.toml", "empty.toml"}) {
    CAPTURE(name);
    const std::string message = refusal(folder, std::string("wattweek check ") + name);
    CHECK(message.find(std::string(name) + ":1:") == 0);
    CHECK(message.find(": error: ") != std::string::npos);
  }
}

TEST_CASE("files: a path in a study starts at the study's folder") {
  const TemporaryFolder folder;
  folder.write("a/study.toml", small_study_with("watts = { idle = 40 }", "profile = \"b/p.toml\""));
  folder.write("a/b/p.toml", "watts = { idle = 40 }\n");
  const std::string inside = shell(folder.path() / "a", "wattweek compare study.toml").out;
  CHECK(inside.find("350.4") != std::string::npos);
  CHECK(shell(folder.path(), "wattweek compare a/study.toml").out == inside);
  CHECK(shell("/", "wattweek compare '" + (folder.path() / "a/study.toml").string() + "'").out ==
        inside);
}

TEST_CASE("files: a mistake in a file that a study names is placed in that file") {
  const TemporaryFolder folder;
  folder.write("a/study.toml", small_study_with("watts = { idle = 40 }", "profile = \"p.toml\""));
  folder.write("a/p.toml", "[watts]\nidel = 40\n");
  CHECK(refusal(folder, "wattweek compare a/study.toml").find("a/p.toml:2:1: error: ") !=
        std::string::npos);
}

TEST_CASE("files: a profile or tariff that does not exist is named where the study names it") {
  const TemporaryFolder folder;
  folder.write("a/study.toml", small_study_with("watts = { idle = 40 }", "profile = \"p.toml\""));
  CHECK(refusal(folder, "wattweek compare a/study.toml") ==
        "a/study.toml:10:11: error: candidate.device.profile = \"p.toml\": 'a/p.toml' does not "
        "exist\n");
}

TEST_CASE("files: shipped profiles and tariffs are found from any folder") {
  const TemporaryFolder folder;
  std::string text =
      small_study_with("watts = { idle = 40 }", "profile = \"shipped:two-bay-storage-box\"");
  text.replace(text.find("[tariff]"), text.find("[[candidate]]") - text.find("[tariff]"), "");
  folder.write("study.toml", "tariff = \"shipped:flat\"\n" + text);
  const Run run = shell(folder.path(), "wattweek compare study.toml");
  CHECK(run.err == "");
  CHECK(run.out.find("Electricity contract: Flat, in EUR") != std::string::npos);
  CHECK(run.out.find("144.5") != std::string::npos);  // 16.5 W * 8.76 kh
  CHECK(run.out.find("\nNotes\n") == std::string::npos);
}

TEST_CASE("files: an unknown shipped name names the nearest and what there is") {
  const TemporaryFolder folder;
  const auto error = [&folder](const std::string& name) {
    folder.write("study.toml",
                 small_study_with("watts = { idle = 40 }", "profile = \"shipped:" + name + "\""));
    return refusal(folder, "wattweek check study.toml");
  };
  CHECK(error("palm-size-bxo") ==
        "study.toml:10:11: error: candidate.device.profile = \"shipped:palm-size-bxo\": no profile "
        "'palm-size-bxo' ships with wattweek; did you mean 'shipped:palm-size-box'? There are "
        "desktop-tower, eight-port-switch, eight-port-switch-with-powered-ports, "
        "four-bay-storage-box, modem, old-two-socket-rack-server, one-litre-desktop, "
        "palm-size-box and 11 more\n");
  CHECK(error("../tariffs/flat") ==
        "study.toml:10:11: error: candidate.device.profile = \"shipped:../tariffs/flat\": no "
        "profile '../tariffs/flat' ships with wattweek; there are desktop-tower, "
        "eight-port-switch, eight-port-switch-with-powered-ports, four-bay-storage-box, modem, "
        "old-two-socket-rack-server, one-litre-desktop, palm-size-box and 11 more\n");
}

TEST_CASE("files: every shipped file and every example is right and worth no note") {
  const Run run = wattweek("check --strict profiles/*.toml tariffs/*.toml docs/examples/*.toml");
  CHECK(run.exit_code == 0);
  CHECK(run.err == "");
}

TEST_CASE("files: a tariff or a profile in place of a study is told apart") {
  CHECK(wattweek("estimate tariffs/flat.toml").err ==
        "tariffs/flat.toml:1:1: error: found a tariff; expected a study (it has a time_zone, a "
        "start, a tariff and candidates)\n");
  CHECK(wattweek("compare profiles/palm-size-box.toml").err ==
        "profiles/palm-size-box.toml:1:1: error: found a profile; expected a study (it has a "
        "time_zone, a start, a tariff and candidates)\n");
}

}  // namespace
}  // namespace wattweek::cli
