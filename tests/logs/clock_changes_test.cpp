// Clock times without zone where the clocks were changed: in Berlin on 27 October 2024 at 01:00
// UTC back from 03:00 to 02:00, on 31 March 2024 at 01:00 UTC on from 02:00 to 03:00 (Directive
// 2000/84/EC, articles 2 and 3).

#include <doctest/doctest.h>

#include "told.hpp"

using namespace wattweek::logs;

namespace {

std::string log_of(const std::vector<std::string>& clocks, const std::string& date) {
  std::string text = "time;power\n";
  for (std::size_t i = 0; i < clocks.size(); ++i) {
    text += fmt::format("{} {};{}\n", date, clocks[i], 5 + i);
  }
  return text;
}

std::string read(const std::vector<std::string>& clocks, const std::string& date = "2024-10-27") {
  return readings_of(log_of(clocks, date), berlin());
}

}  // namespace

TEST_CASE("the doubled hour written twice by the half-hour is the two passes") {
  CHECK(read({"01:30", "02:00", "02:30", "02:00", "02:30", "03:00"}) == R"(2024-10-26 23:30:00 5
2024-10-27 00:00:00 6
2024-10-27 00:30:00 7
2024-10-27 01:00:00 8
2024-10-27 01:30:00 9
2024-10-27 02:00:00 10
)");
}

TEST_CASE("the doubled hour written twice by the hour is the two passes") {
  CHECK(read({"01:00", "02:00", "02:00", "03:00"}) == R"(2024-10-26 23:00:00 5
2024-10-27 00:00:00 6
2024-10-27 01:00:00 7
2024-10-27 02:00:00 8
)");
}

TEST_CASE("the doubled hour written once is the first pass") {
  CHECK(read({"01:00", "02:00", "03:00"}) == R"(2024-10-26 23:00:00 5
2024-10-27 00:00:00 6
2024-10-27 02:00:00 7
)");
  CHECK(read({"01:30", "02:00", "02:30", "03:00"}) == R"(2024-10-26 23:30:00 5
2024-10-27 00:00:00 6
2024-10-27 00:30:00 7
2024-10-27 02:00:00 8
)");
}

TEST_CASE("the doubled hour written twice, newest first") {
  CHECK(read({"03:00", "02:30", "02:00", "02:30", "02:00", "01:30"}) == R"(2024-10-26 23:30:00 10
2024-10-27 00:00:00 9
2024-10-27 00:30:00 8
2024-10-27 01:00:00 7
2024-10-27 01:30:00 6
2024-10-27 02:00:00 5
)");
  CHECK(read({"03:00", "02:00", "02:00", "01:00"}) == R"(2024-10-26 23:00:00 8
2024-10-27 00:00:00 7
2024-10-27 01:00:00 6
2024-10-27 02:00:00 5
)");
}

TEST_CASE("the doubled hour written once, newest first, is the first pass") {
  CHECK(read({"03:00", "02:00", "01:00"}) == R"(2024-10-26 23:00:00 7
2024-10-27 00:00:00 6
2024-10-27 02:00:00 5
)");
  CHECK(read({"03:30", "03:00", "02:30", "02:00", "01:30"}) == R"(2024-10-26 23:30:00 9
2024-10-27 00:00:00 8
2024-10-27 00:30:00 7
2024-10-27 02:00:00 6
2024-10-27 02:30:00 5
)");
}

TEST_CASE("the doubled hour by the second, through all of it") {
  std::string text = "time,power\n";
  const auto hour = [&](int h, int value) {
    for (int s = 0; s < 3600; ++s) {
      text += fmt::format("2024-10-27 {:02}:{:02}:{:02},{}\n", h, s / 60, s % 60, value);
    }
  };
  hour(1, 1);
  hour(2, 2);
  hour(2, 3);
  hour(3, 4);
  const Logged log = logged(text, berlin());
  REQUIRE(log.readings.size() == 4 * 3600);
  for (std::size_t i = 0; i < log.readings.size(); ++i) {
    // 2024-10-26 23:00 UTC is 1729983600.
    REQUIRE(log.readings[i].at_us == (1'729'983'600 + static_cast<Microseconds>(i)) * 1'000'000);
    REQUIRE(log.readings[i].value == static_cast<double>(1 + i / 3600));
  }
}

TEST_CASE("a row in the hour that the clocks skip is dropped") {
  CHECK(told(log_of({"01:00", "01:30", "02:00", "02:30", "03:00"}, "2024-03-31"), berlin()) ==
        R"(columns: separated by ';' (--delimiter)
time: 'time', without zone (--columns)
values: 'power' (--columns)
kind: power in W, since no unit is given (--kind, --unit)
5 rows, 3 used, 2 no-such-hour (line 4)
2024-03-31 00:00:00 5
2024-03-31 00:30:00 6
2024-03-31 01:00:00 9
)");
}

TEST_CASE("summer and winter time of a year") {
  CHECK(readings_of("time;power\n2024-01-01 00:00;5\n2024-07-01 00:00;6\n"
                    "2024-12-01 00:00;7\n",
                    berlin()) ==
        "2023-12-31 23:00:00 5\n2024-06-30 22:00:00 6\n2024-11-30 23:00:00 7\n");
}
