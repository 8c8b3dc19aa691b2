// Wrong input, refused by the program: the whole message, exit code 2, nothing on standard output.

#include <sys/stat.h>

#include <algorithm>
#include <utility>

#include "program.hpp"

namespace wattweek::cli {
namespace {

namespace fs = std::filesystem;

constexpr std::size_t kMostBytes = 16U << 20U;
const std::string kTariff = "currency = \"EUR\"\nband = [{ name = \"all\", price = 0.3 }]\n";

/// A study whose tariff, on line 3, and profile, on line 7, are paths.
std::string study_of(const std::string& tariff, const std::string& profile) {
  return "time_zone = \"Etc/UTC\"\n"
         "start = 2027-01-01\n"
         "tariff = \"" +
         tariff +
         "\"\n"
         "[[candidate]]\n"
         "id = \"box\"\n"
         "[[candidate.device]]\n"
         "profile = \"" +
         profile + "\"\n";
}

std::string refusal(const TemporaryFolder& folder, const std::string& words) {
  const Run run = shell(folder.path(), "wattweek " + words);
  CHECK(run.exit_code == 2);
  CHECK(run.out == "");
  return run.err;
}

/// A profile with so many increments below zero, which stand from line 4 on.
std::string profile_with_mistakes(int count) {
  std::string text = "[watts]\nidle = 8\n[increments]\n";
  for (int i = 0; i < count; ++i) text += "w" + std::to_string(i) + " = -1\n";
  return text;
}

TEST_CASE("refusals: a horizon that is no whole number from 1 to 30") {
  const TemporaryFolder folder;
  folder.write("study.toml", study_of("shipped:flat", "shipped:palm-size-box"));
  for (const std::string years : {"0", "31", "abc", "2.5", "-3"}) {
    for (const std::string command : {"estimate", "compare"}) {
      CHECK(refusal(folder, command + " study.toml --years " + years) ==
            "wattweek: error: --years: found '" + years +
                "', accepted is a whole number from 1 to 30\n");
    }
  }
}

TEST_CASE("refusals: an option without its value") {
  const TemporaryFolder folder;
  CHECK(refusal(folder, "compare study.toml --baseline") ==
        "wattweek: error: compare: --baseline needs a value, ID: the candidate that the others are "
        "compared with, in place of the study's\n");
  CHECK(refusal(folder, "quick --price 0.3 --idle") ==
        "wattweek: error: quick: --idle needs a value, W: watts with nobody using it\n");
}

TEST_CASE("refusals: a reading or a price that is no number") {
  const TemporaryFolder folder;
  for (const std::string watts : {"nan", "inf", "-inf", "-0.5", "1e999", "13.5W"}) {
    CHECK(refusal(folder, "quick --price 0.3 --idle " + watts) ==
          "wattweek: error: --idle: found '" + watts +
              "', accepted is a number of watts, 0 to 1e9\n");
  }
  CHECK(refusal(folder, "quick --price 0.3 --idle 1,5") ==
        "wattweek: error: --idle: found '1,5', accepted is a number of watts, 0 to 1e9, with a "
        "decimal point\n");
  CHECK(refusal(folder, "quick --idle 8 --price nan") ==
        "wattweek: error: --price: found 'nan', accepted is a price of a kWh, -1e9 to 1e9\n");
}

TEST_CASE("refusals: binary files") {
  const TemporaryFolder folder;
  folder.write("study.toml", std::string("title = \0x", 10));
  const std::string message =
      "study.toml:1:9: error: not a text file: it holds a NUL byte; expected TOML text in UTF-8\n";
  for (const char* command : {"estimate", "compare", "check"}) {
    CHECK(refusal(folder, std::string(command) + " study.toml") == message);
  }
}

TEST_CASE("refusals: a byte more than 16 MiB, and not a byte less") {
  const TemporaryFolder folder;
  folder.write("zeros.toml", "");
  fs::resize_file(folder.path() / "zeros.toml", kMostBytes);
  CHECK(refusal(folder, "check zeros.toml") ==
        "zeros.toml:1:1: error: not a text file: it holds a NUL byte; expected TOML text in "
        "UTF-8\n");
  fs::resize_file(folder.path() / "zeros.toml", kMostBytes + 1);
  CHECK(refusal(folder, "check zeros.toml") ==
        "wattweek: error: 'zeros.toml' is larger than 16 MiB\n");
}

TEST_CASE("refusals: a tariff or a profile that a study names and that cannot be read") {
  const TemporaryFolder folder;
  fs::create_directory(folder.path() / "folder");
  REQUIRE(mkfifo((folder.path() / "pipe").c_str(), 0600) == 0);
  fs::create_symlink("ring", folder.path() / "ring");
  folder.write("large", "");
  fs::resize_file(folder.path() / "large", kMostBytes + 1);
  const std::pair<std::string, std::string> causes[] = {
      {"none.toml", "does not exist"},
      {"folder", "is a folder, not a file"},
      {"pipe", "is not a regular file"},
      {"ring", "cannot be reached: Too many levels of symbolic links"},
      {"large", "is larger than 16 MiB"}};
  for (const auto& [path, why] : causes) {
    const std::string reason = " = \"" + path + "\": '" + path + "' " + why + "\n";
    folder.write("study.toml", study_of(path, path));
    CHECK(refusal(folder, "compare study.toml") ==
          "study.toml:3:10: error: tariff" + reason +
              "study.toml:7:11: error: candidate.device.profile" + reason);
  }
}

TEST_CASE("refusals: an empty path names no file") {
  const TemporaryFolder folder;
  folder.write("study.toml", study_of("", ""));
  CHECK(refusal(folder, "compare study.toml") ==
        "study.toml:3:10: error: tariff = \"\": the text is empty; expected the path of a tariff "
        "file in quotes, \"shipped:NAME\", or a table [tariff]\n"
        "study.toml:7:11: error: candidate.device.profile = \"\": the text is empty; expected the "
        "path of a profile file in quotes, or \"shipped:NAME\"\n");
}

TEST_CASE("refusals: a shipped tariff or profile that is not there, with the nearest one") {
  const TemporaryFolder folder;
  folder.write("study.toml", study_of("shipped:flatt", "shipped:two-bay-storge-box"));
  CHECK(
      refusal(folder, "compare study.toml") ==
      "study.toml:3:10: error: tariff = \"shipped:flatt\": no tariff 'flatt' ships with wattweek; "
      "did you mean 'shipped:flat'? There are bands-and-blocks, blocks-alone, blocks-by-day, "
      "blocks-by-month, blocks-by-season, flat, minimum-bill, negative-price-hours and 5 more\n"
      "study.toml:7:11: error: candidate.device.profile = \"shipped:two-bay-storge-box\": no "
      "profile 'two-bay-storge-box' ships with wattweek; did you mean "
      "'shipped:two-bay-storage-box'? There are desktop-tower, eight-port-switch, "
      "eight-port-switch-with-powered-ports, four-bay-storage-box, modem, "
      "old-two-socket-rack-server, one-litre-desktop, palm-size-box and 11 more\n");
}

TEST_CASE("refusals: mistakes in two of four files, each in its file, and the notes behind them") {
  const TemporaryFolder folder;
  folder.write("good.toml", kTariff);
  folder.write("cents.toml", "currency = \"EUR\"\nband = [{ name = \"all\", price = 30 }]\n");
  folder.write("kind.toml", "[watts]\nidel = 8\noff = \"x\"\n");
  folder.write("point.toml", "currency = \"EUR\"\n[[band]]\nname = \"all\"\nprice = 29,7\n");
  CHECK(
      refusal(folder, "check good.toml kind.toml cents.toml point.toml") ==
      "kind.toml:1:1: error: watts.idle is missing: expected a number or a range [low, high], not "
      "below 0, in W, or at_load or week in its place\n"
      "kind.toml:2:1: error: unknown key watts.idel: did you mean idle?\n"
      "kind.toml:3:7: error: watts.off = \"x\": expected a number or a range [low, high], not "
      "below 0, in W\n"
      "point.toml:4:11: error: price = 29,7: not a number as TOML writes it; write 29.7 (with a "
      "decimal point)\n"
      "cents.toml:2:33: note: a price of 30 EUR per kWh looks like one in hundredths; write 0.3 "
      "if it is [price-like-cents]\n");
}

TEST_CASE("refusals: a mistake in a profile is said once, however many files lead to it") {
  const TemporaryFolder folder;
  folder.write("p.toml", "watts = { idle = -8 }\n");
  folder.write("study.toml", study_of("shipped:flat", "p.toml"));
  folder.write("other.toml", study_of("shipped:flat", "p.toml"));
  CHECK(refusal(folder, "check study.toml other.toml p.toml") ==
        "p.toml:1:18: error: watts.idle = -8: expected a number or a range [low, high], not below "
        "0, in W\n");
}

TEST_CASE("refusals: fifty mistakes are all printed, and of the next only that there is one") {
  const TemporaryFolder folder;
  folder.write("p.toml", profile_with_mistakes(50));
  const std::string fifty = refusal(folder, "check p.toml");
  CHECK(std::count(fifty.begin(), fifty.end(), '\n') == 50);
  CHECK(fifty.find("more") == std::string::npos);
  folder.write("p.toml", profile_with_mistakes(51));
  CHECK(refusal(folder, "check p.toml") == fifty + "wattweek: error: and 1 more error\n");
}

TEST_CASE("refusals: a mistake said on a full disk keeps its exit code") {
  const TemporaryFolder folder;
  CHECK(shell(folder.path(), "wattweek compare none.toml 2>/dev/full").exit_code == 2);
  CHECK(shell(folder.path(), "wattweek compare none.toml 2>&-").exit_code == 2);
}

TEST_CASE("quick: a price that looks like cents is divided without a tail of digits") {
  const TemporaryFolder folder;
  CHECK(shell(folder.path(), "wattweek quick --idle 10 --price 35.7").err ==
        "wattweek: note: a price of 35.7 per kWh looks like one in hundredths; write 0.357 if it "
        "is\n");
}

}  // namespace
}  // namespace wattweek::cli
