// Rows read fast, against the same rows read the general way: a column before the time is enough
// for that.

#include <doctest/doctest.h>
#include <fmt/format.h>

#include <random>
#include <string>
#include <vector>

#include "told.hpp"

using namespace wattweek::logs;

namespace {

struct Way {
  const char* heading;
  const char* ending;  // Of the stamp.
  const char* line_end;
};

// Values that the fast way reads, and such as it must leave alone.
std::string value_of(std::mt19937& random) {
  switch (random() % 40) {
    case 0:
      return "-";
    case 1:
      return "-3.5";
    case 2:
      return "1000000.5";
    case 3:
      return "12.5 W";
    case 4:
      return "1.25e2";
    case 5:
      return "0.12345678901234567";
    case 6:
      return "";
    case 7:
      return ".5";
    case 8:
      return "7.";
    default:
      return fmt::format("{:.{}f}", static_cast<double>(random() % 1'000'000) / 997, random() % 10);
  }
}

// Seconds from row to row: most go on by a few, some jump, stay or go back.
int step_of(std::mt19937& random) {
  switch (random() % 60) {
    case 0:
      return 3'000;
    case 1:
      return 0;
    case 2:
      return -20;
    case 3:
      return 86'400 * 3;
    default:
      return 1 + static_cast<int>(random() % 40);
  }
}

// The same rows with and without a column before them.
struct Twins {
  std::string fast;
  std::string general;
};

Twins twins_of(std::mt19937& random, const Way& way) {
  Twins twins{fmt::format("time,power{}{}", way.heading, way.line_end),
              fmt::format("x,time,power{}{}", way.heading, way.line_end)};
  // Around 27 October 2024 and 31 March 2024, as clocks showed it.
  Microseconds clock_s = random() % 2 == 0 ? 1'729'987'000 : 1'711'848'600;
  const bool has_more = *way.heading != '\0';
  for (int i = 0; i < 400; ++i) {
    std::string stamp = utc_text(clock_s * 1'000'000) + way.ending;
    if (random() % 97 == 0) stamp.insert(19, ".5");
    if (random() % 89 == 0) stamp = "rubbish at such a place";
    const std::string row = stamp + "," + value_of(random) + (has_more ? ",b" : "") + way.line_end;
    twins.fast += row;
    twins.general += "x," + row;
    clock_s += step_of(random);
  }
  return twins;
}

// All that must be the same.
std::string outcome(const std::string& text) {
  const Logged log = logged(text, berlin());
  std::string page = log.problems + fmt::format("{} {}\n", log.report.rows, log.report.used);
  for (const Dropped& dropped : log.report.dropped) {
    page += fmt::format("{} {} {}\n", dropped.reason, dropped.rows, dropped.first_line);
  }
  for (const Reading& reading : log.readings) {
    page += fmt::format("{} {}\n", reading.at_us, reading.value);
  }
  return page;
}

}  // namespace

TEST_CASE("rows that are read fast are read as all others are") {
  const std::vector<Way> ways = {{"", "", "\n"},        {"", "Z", "\n"},      {"", "+02:00", "\n"},
                                 {",more", "", "\r\n"}, {",more", "Z", "\n"}, {"", "", "\r\n"}};
  std::mt19937 random(11);
  for (int i = 0; i < 120; ++i) {
    const Twins twins = twins_of(random, ways[random() % ways.size()]);
    CAPTURE(i);
    const std::string fast = outcome(twins.fast), general = outcome(twins.general);
    CHECK(fast.size() > 5'000);
    CHECK(fast == general);
  }
}

TEST_CASE("where no decimal mark was ever seen, a zero byte far down in the log is none either") {
  std::string fast, general;
  for (int s = 0; s < 3'600; ++s) {
    const std::string value = s == 3'500 ? std::string("4\0001", 3) : std::to_string(40 + s % 5);
    const std::string row = fmt::format("2025-01-01 10:{:02}:{:02};{};1\n", s / 60, s % 60, value);
    fast += row;
    general += "x;" + row;
  }
  CHECK(outcome(fast) == outcome(general));
  CHECK(outcome(fast).find("3600 3599\nno-value 1 3501\n") == 0);
}

TEST_CASE("a comma that sets columns apart is no decimal comma") {
  LogOptions options = berlin();
  options.decimal = ',';
  options.power_column = "2";
  const Logged log = logged(
      "2025-01-01 10:00:00,\"41,5\",7\n2025-01-01 10:00:01,42,7\n"
      "2025-01-01 10:00:02,43,7\n",
      options);
  REQUIRE(log.readings.size() == 3);
  CHECK(log.readings[0].value == 41.5);
  CHECK(log.readings[1].value == 42);
  CHECK(log.readings[2].value == 43);
}
