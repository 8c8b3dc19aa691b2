// What `fit` refuses of its options and files, in whole messages.

#include <sys/stat.h>

#include "program.hpp"

namespace wattweek::cli {
namespace {

/// The error of options behind a good log, which must leave standard output empty.
std::string refusal(const std::string& words) {
  const Run run = wattweek("fit docs/examples/plug-log.csv " + words);
  CHECK(run.exit_code == 2);
  CHECK(run.out == "");
  return run.err;
}

TEST_CASE("fit: words of a fixed list are taken as they are spelt, and the nearest is named") {
  CHECK(refusal("--kind counters") ==
        "wattweek: error: --kind: found 'counters'; did you mean 'counter'? Accepted are power, "
        "energy, counter\n");
  CHECK(refusal("--stamps middle") ==
        "wattweek: error: --stamps: found 'middle'; accepted are start, end\n");
  CHECK(refusal("--date-order ydm") ==
        "wattweek: error: --date-order: found 'ydm'; did you mean 'ymd'? Accepted are dmy, mdy, "
        "ymd\n");
  CHECK(refusal("--unit kw") ==
        "wattweek: error: --unit: found 'kw'; did you mean 'kW'? Accepted are W, kW, Wh, kWh\n");
  CHECK(refusal("--decimal point") ==
        "wattweek: error: --decimal: found 'point', accepted is . or ,\n");
  CHECK(refusal("--delimiter /") ==
        "wattweek: error: --delimiter: found '/', accepted is one of , ; | or the word tab or "
        "blank\n");
}

TEST_CASE("fit: columns are named by what they hold, each once") {
  const std::string accepted =
      ", accepted is time=NAME,power=NAME or time=NAME,energy=NAME, or one of the two parts\n";
  for (const std::string wrong :
       {"watts", "time=", "power=a,power=b", "power=a,energy=b", "watts=2,time=1"}) {
    CHECK(refusal("--columns " + wrong) ==
          "wattweek: error: --columns: found '" + wrong + "'" + accepted);
  }
  CHECK(refusal("--where 7") == "wattweek: error: --where: found '7', accepted is COLUMN=VALUE\n");
  CHECK(refusal("--where =7") ==
        "wattweek: error: --where: found '=7', accepted is COLUMN=VALUE\n");
}

TEST_CASE("fit: a heading with a comma can be named") {
  const TemporaryFolder folder;
  folder.write("a.csv",
               "time;power, mean;power, most\n2027-03-01 12:00;10;11\n"
               "2027-03-01 12:01;12;13\n2027-03-01 12:02;14;15\n");
  const Run run = shell(folder.path(),
                        "wattweek fit a.csv --zone Europe/Dublin --format json "
                        "--columns 'time=time,power=power, most'");
  CHECK(run.out.find("\"mean_w\": 12.0") != std::string::npos);
}

TEST_CASE("fit: seconds, percent and watts are numbers within reason") {
  CHECK(refusal("--gap 5min") ==
        "wattweek: error: --gap: found '5min', accepted is a number of seconds, up to a year\n");
  CHECK(refusal("--gap -1") ==
        "wattweek: error: --gap: found '-1', accepted is a number of seconds, up to a year\n");
  for (const std::string wrong : {"2", "2,0.5,1"}) {
    CHECK(refusal("--meter-error " + wrong) ==
          "wattweek: error: --meter-error: found '" + wrong +
              "', accepted is PERCENT,WATTS with decimal points, such as 2,0.5\n");
  }
  CHECK(refusal("--meter-error 101,0") ==
        "wattweek: error: --meter-error: found '101', accepted is a percentage from 0 to 100\n");
  CHECK(refusal("--meter-error 2,x") ==
        "wattweek: error: --meter-error: found 'x', accepted is watts, 0 to 1000\n");
}

TEST_CASE("fit: a zone that does not exist, and --force without a profile") {
  CHECK(refusal("--zone Europe/Dubln") ==
        "wattweek: error: --zone: found 'Europe/Dubln': no such time zone; did you mean "
        "'Europe/Dublin'?\n");
  CHECK(refusal("--zone Europe/Dublin --force") ==
        "wattweek: error: --force: goes with --profile\n");
  CHECK(refusal("--format csv") ==
        "wattweek: error: --format: unknown format 'csv'; accepted are text, json\n");
}

TEST_CASE("fit: a log or an activity that is no file is refused unread") {
  const TemporaryFolder folder;
  std::filesystem::create_directory(folder.path() / "logs");
  REQUIRE(mkfifo((folder.path() / "pipe.csv").c_str(), 0600) == 0);
  const auto error_of = [&](const std::string& words) {
    const Run run = shell(folder.path(), "wattweek fit " + words);
    CHECK(run.exit_code == 2);
    CHECK(run.out == "");
    return run.err;
  };
  CHECK(error_of("none.csv") == "wattweek: error: 'none.csv' does not exist\n");
  CHECK(error_of("logs") == "wattweek: error: 'logs' is a folder, not a file\n");
  CHECK(error_of("pipe.csv") == "wattweek: error: 'pipe.csv' is not a regular file\n");
  CHECK(error_of("''") == "wattweek: error: an empty path names no file\n");
  const std::string log = "'" WATTWEEK_SOURCE_DIR "/docs/examples/plug-log.csv' --zone Etc/UTC ";
  CHECK(error_of(log + "--activity none.csv") ==
        "wattweek: error: --activity: 'none.csv' does not exist\n");
  CHECK(error_of(log + "--tariff none.toml") ==
        "wattweek: error: --tariff: 'none.toml' does not exist\n");
}

TEST_CASE("fit: where the separator is not the log's, the first line shows it") {
  CHECK(
      refusal("--zone Etc/UTC --delimiter ';'") ==
      "docs/examples/plug-log.csv:1:1: error: no row with a date and a number was found; the first "
      "line is 'time,power (W)'; expected columns separated by ';' (--delimiter)\n");
}

TEST_CASE("fit: mistakes of a log and of an activity stand at their line and column") {
  const TemporaryFolder folder;
  folder.write("empty.csv", "");
  folder.write("a.csv", "workload,start,end\nfilms,2027-03-01 20:00,2027-03-01 19:00\n,1,2\n");
  CHECK(shell(folder.path(), "wattweek fit empty.csv").err ==
        "empty.csv:1:1: error: there are no rows in this log\n");
  const Run run =
      shell(folder.path(), "wattweek fit '" WATTWEEK_SOURCE_DIR
                           "/docs/examples/plug-log.csv' --zone Etc/UTC --activity a.csv");
  CHECK(run.exit_code == 2);
  CHECK(run.err.find("a.csv:2:24: error: end: '2027-03-01 19:00' is not after the start "
                     "'2027-03-01 20:00'; expected a later time\n") == 0);
  CHECK(run.err.find("\na.csv:3:1: error: workload: expected its id, found nothing\n") !=
        std::string::npos);
}

}  // namespace
}  // namespace wattweek::cli
