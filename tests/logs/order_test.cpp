// Rows out of order, twice at a time, and rows that contradict what was inferred.

#include <doctest/doctest.h>

#include "told.hpp"

using namespace wattweek::logs;

namespace {

std::string rows_of(int count, const std::string& end_of_row = ",5\n") {
  std::string text;
  for (int i = 0; i < count; ++i) text += std::to_string(1'700'000'000 + i) + end_of_row;
  return text;
}

}  // namespace

TEST_CASE("layout 27: rows out of order are put in order") {
  const Logged log = logged("1700000020,7\n1700000000,5\n1700000010,6\n1700000030,6.5\n");
  CHECK(readings_text(log.readings) ==
        "2023-11-14 22:13:20 5\n2023-11-14 22:13:30 6\n2023-11-14 22:13:40 7\n"
        "2023-11-14 22:13:50 6.5\n");
  CHECK(log.report.out_of_order == 2);
  CHECK_FALSE(log.report.sorted_whole);
}

TEST_CASE("a file with the newest row first is put in order") {
  const Logged log = logged("1700000020,7\n1700000010,6\n1700000000,6.5\n");
  CHECK(readings_text(log.readings) ==
        "2023-11-14 22:13:20 6.5\n2023-11-14 22:13:30 6\n2023-11-14 22:13:40 7\n");
}

TEST_CASE("layout 27: of rows at one time the last in the file counts") {
  CHECK(told("1700000000,5\n1700000000,6\n1700000010,7\n1700000020,3\n1700000010,8\n") ==
        R"(columns: separated by ',' (--delimiter)
time: column 1, seconds since 1970 (--columns)
values: column 2 (--columns)
kind: power in W, since no unit is given (--kind, --unit)
5 rows, 3 used, 2 same-time
2023-11-14 22:13:20 6
2023-11-14 22:13:30 8
2023-11-14 22:13:40 3
)");
}

TEST_CASE("of rows at one time the last counts, though it has no value") {
  CHECK(told("1700000000,5\n1700000000,-\n1700000010,7\n") ==
        R"(columns: separated by ',' (--delimiter)
time: column 1, seconds since 1970 (--columns)
values: column 2 (--columns)
kind: power in W, since no unit is given (--kind, --unit)
3 rows, 1 used, 1 no-value (line 2), 1 same-time
2023-11-14 22:13:20 nan
2023-11-14 22:13:30 7
)");
}

TEST_CASE("rows farther than a million from their place are sorted whole, and that is said") {
  const Logged log = logged(rows_of(2'200'000) + "1699999999,7\n");
  CHECK(log.problems == "");
  REQUIRE(log.readings.size() == 2'200'001);
  CHECK(log.readings.front().value == 7);
  CHECK(log.report.sorted_whole);
}

TEST_CASE("a date order that a later row contradicts is an error with its line") {
  std::string text;
  for (int i = 0; i < 100'001; ++i) {
    text += fmt::format("01/13/2024 {:02}:{:02}:{:02};5\n", i / 3600 % 24, i / 60 % 60, i % 60);
  }
  CHECK(told(text + "14/01/2024 00:00:00;5\n", berlin()) ==
        "log.csv:100002:1: error: the time '14/01/2024 00:00:00' is not of the kind that the rows "
        "before have; see --date-order\n");
}

TEST_CASE("a decimal mark that a later row contradicts is an error with its line") {
  CHECK(told(rows_of(100'001, ";5.5\n") + "1700200000;5,5\n") ==
        "log.csv:100002:1: error: the number '5,5' is not written as those of the rows before; see "
        "--decimal\n");
}

TEST_CASE("a time of another kind in a later row is an error with its line") {
  CHECK(told(rows_of(100'001) + "2024-01-01T00:00:00Z,5\n") ==
        "log.csv:100002:1: error: the time '2024-01-01T00:00:00Z' is not of the kind that the rows "
        "before have\n");
  CHECK(
      told("2024-01-01T00:00:00Z,5\n2024-01-01T00:01:00Z,5\n2024-01-01T00:02:00Z,5\n"
           "2024-01-01 00:03:00,5\n") ==
      "log.csv:4:1: error: the time '2024-01-01 00:03:00' is not of the kind that the rows before "
      "have; see --date-order\n");
}

TEST_CASE("a device that comes up behind the first rows is an error with its line") {
  std::string text = "time,power,device\n" + rows_of(100'001, ",5,plug_1\n");
  CHECK(told(text + "1700200000,5,plug_2\n") ==
        "log.csv:100003:1: error: 'device' has 'plug_2', the rows before have 'plug_1'; say which "
        "to keep by --where device=VALUE\n");
}
