#include <nlohmann/json.hpp>

#include "program.hpp"
#include "small_study.hpp"

namespace wattweek::cli {
namespace {

TEST_CASE("output: a full disk is exit code 1 and said") {
  const Run run = wattweek("compare docs/examples/ostrawick.toml >/dev/full");
  CHECK(run.exit_code == 1);
  CHECK(run.err == "wattweek: error: standard output cannot be written: No space left on device\n");
}

TEST_CASE("output: a reader that has gone away is exit code 1 and said") {
  const TemporaryFolder folder;
  const std::string program = WATTWEEK_PROGRAM " quick --idle 10 --price 0.3";
  const Run run =
      shell(folder.path(), "{ sleep 0.3; " + program + "; echo $? >code; } | true; sleep 0.6");
  CHECK(text_of(folder.path() / "code") == "1\n");
  CHECK(run.err == "wattweek: error: standard output cannot be written: Broken pipe\n");
}

TEST_CASE("output: a closed standard output is exit code 1 and said") {
  const Run run = wattweek("quick --idle 10 --price 0.3 >&-");
  CHECK(run.exit_code == 1);
  CHECK(run.err == "wattweek: error: standard output cannot be written: Bad file descriptor\n");
}

TEST_CASE("output: with exit code 2 a file that would be written to stays empty") {
  const TemporaryFolder folder;
  folder.write("study.toml", small_study_with("price = 0.25", "price = \"0.25\""));
  for (const char* format : {"text", "json", "csv", "markdown"}) {
    const Run run =
        shell(folder.path(), std::string("wattweek compare study.toml --format ") + format);
    CHECK(run.exit_code == 2);
    CHECK(run.out == "");
    CHECK(run.err.find("study.toml:6:33: error: ") == 0);
  }
}

TEST_CASE("output: the same input gives the same bytes, in any language and time zone") {
  for (const char* format : {"text", "json", "csv", "markdown"}) {
    const std::string command =
        std::string("wattweek compare docs/examples/ostrawick.toml --format ") + format;
    const Run plain = shell(WATTWEEK_SOURCE_DIR, command);
    REQUIRE(plain.exit_code == 0);
    for (const char* language : {"de_DE.UTF-8", "fr_FR.UTF-8", "tr_TR.UTF-8", "C", "no_such"}) {
      const Run other = shell(WATTWEEK_SOURCE_DIR, "export LC_ALL=" + std::string(language) +
                                                       " LANGUAGE=de TZ=Asia/Tokyo; " + command);
      CHECK(other.out == plain.out);
      CHECK(other.err == "");
    }
  }
}

TEST_CASE("output: every format prints the notes, and on standard output alone") {
  const TemporaryFolder folder;
  folder.write("study.toml", small_study_with("price = 0.25", "price = 25"));
  for (const char* command : {"estimate", "compare"}) {
    for (const char* format : {"text", "json", "csv", "markdown"}) {
      CAPTURE(format);
      const Run run = shell(folder.path(),
                            std::string("wattweek ") + command + " study.toml --format " + format);
      CHECK(run.exit_code == 0);
      CHECK(run.err == "");
      CHECK(run.out.find("price-like-cents") != std::string::npos);
    }
  }
}

TEST_CASE("output: lines into a pipe are at most 80 columns wide") {
  const std::string text = wattweek("compare docs/examples/ostrawick.toml").out;
  std::size_t widest = 0;
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t end = text.find('\n', at);
    widest = std::max(widest, end - at);
    at = end + 1;
  }
  CHECK(widest <= 80);
  CHECK(widest > 70);
}

}  // namespace
}  // namespace wattweek::cli
