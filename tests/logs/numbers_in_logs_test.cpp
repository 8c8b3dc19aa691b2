// Separators, decimal marks, thousands marks, and words for no value.

#include <doctest/doctest.h>

#include "told.hpp"

using namespace wattweek::logs;

namespace {

// Rows of one minute each with these values, behind a heading.
std::string rows_of(const std::vector<std::string>& values, const std::string& delimiter = ";") {
  std::string text = "time" + delimiter + "power W\n";
  for (std::size_t i = 0; i < values.size(); ++i) {
    text += fmt::format("2024-07-01T00:{:02}:00Z{}{}\n", i, delimiter, values[i]);
  }
  return text;
}

std::string values_of(const std::vector<std::string>& values, const LogOptions& options = {},
                      const std::string& delimiter = ";") {
  const Logged log = logged(rows_of(values, delimiter), options);
  std::string text = log.problems;
  for (const Reading& reading : log.readings) text += fmt::format("{} ", reading.value);
  return text;
}

}  // namespace

TEST_CASE("layout 11: a decimal comma behind semicolons") {
  CHECK(told(rows_of({"14,95", "0,5", "1200"})) == R"(columns: separated by ';' (--delimiter)
time: 'time', with UTC or an offset (--columns)
values: 'power W' (--columns)
numbers: decimal comma (--decimal)
kind: power in W (--kind, --unit)
3 rows, 3 used
2024-07-01 00:00:00 14.95
2024-07-01 00:01:00 0.5
2024-07-01 00:02:00 1200
)");
}

TEST_CASE("layout 11: thousands marks: apostrophe, dot, comma, blanks") {
  CHECK(values_of({"1'485", "999.5"}) == "1485 999.5 ");
  CHECK(values_of({"1\xe2\x80\x99"
                   "485",
                   "999.5"}) == "1485 999.5 ");
  CHECK(values_of({"1.234,5", "999,25"}) == "1234.5 999.25 ");
  CHECK(values_of({"1,234.5", "999.25"}) == "1234.5 999.25 ");
  CHECK(values_of({"\"1,234.5\"", "999.25"}, {}, ",") == "1234.5 999.25 ");
  CHECK(values_of({"1\xe2\x80\xaf"
                   "234,5",
                   "999,25"}) == "1234.5 999.25 ");
  CHECK(values_of({"1\xe2\x80\x89"
                   "234,5",
                   "999,25"}) == "1234.5 999.25 ");
  CHECK(values_of({"1\xc2\xa0"
                   "234,5",
                   "999,25"}) == "1234.5 999.25 ");
  CHECK(values_of({"1\xa0"
                   "234,5",
                   "999,25"}) == "1234.5 999.25 ");
  CHECK(values_of({"1 234,5", "999,25"}) == "1234.5 999.25 ");
}

TEST_CASE("layout 11: what is inferred of thousands marks is said") {
  CHECK(told(rows_of({"1.234,5", "999,25"})) == R"(columns: separated by ';' (--delimiter)
time: 'time', with UTC or an offset (--columns)
values: 'power W' (--columns)
numbers: decimal comma, with thousands marks (--decimal)
kind: power in W (--kind, --unit)
2 rows, 2 used
2024-07-01 00:00:00 1234.5
2024-07-01 00:01:00 999.25
)");
}

TEST_CASE("a mark before three digits that may be either is refused") {
  CHECK(told(rows_of({"1,234", "2,345"})) ==
        "log.csv:2:22: error: '1,234' may be thousands or a fraction; say what the decimal mark is "
        "by --decimal . or --decimal ,\n");
  CHECK(told(rows_of({"12", "2.345"})) ==
        "log.csv:3:22: error: '2.345' may be thousands or a fraction; say what the decimal mark is "
        "by --decimal . or --decimal ,\n");
}

TEST_CASE("the decimal mark can be said") {
  CHECK(values_of({"1,234", "2,345"}, {.decimal = ','}) == "1.234 2.345 ");
  CHECK(values_of({"1,234", "2,345"}, {.decimal = '.'}) == "1234 2345 ");
  CHECK(values_of({"1.234", "2.345"}, {.decimal = ','}) == "1234 2345 ");
}

TEST_CASE("where commas set columns apart a point before three digits is plain") {
  CHECK(values_of({"1.234", "2.345"}, {}, ",") == "1.234 2.345 ");
}

TEST_CASE("the marks of another column show what a mark is") {
  const Logged log = logged(
      "time;power W;voltage V\n2024-07-01T00:00:00Z;41.234;229.1\n"
      "2024-07-01T00:01:00Z;41.235;229.2\n");
  CHECK(log.problems == "");
  CHECK(readings_text(log.readings) == "2024-07-01 00:00:00 41.234\n2024-07-01 00:01:00 41.235\n");
}

TEST_CASE("a point in some rows and a comma in others are refused") {
  CHECK(told(rows_of({"12,5", "12.5"})) ==
        "log.csv:3:22: error: numbers in 'power W' have a decimal point in some rows and a decimal "
        "comma in others, such as '12.5'; expected one of them throughout\n");
}

TEST_CASE("numbers may begin or end with their mark and have a sign or an exponent") {
  CHECK(values_of({".5", "5.", "+7", "1.25e1", "1E2"}) == "0.5 5 7 12.5 100 ");
}

TEST_CASE("a unit may stand behind the number") {
  CHECK(values_of({"12.5 W", "0.5 kW", "7W"}) == "12.5 500 7 ");
}

TEST_CASE("a unit that is none of the column's kind is an error") {
  CHECK(
      told(rows_of({"12.5 W", "0.5 kWh"})) ==
      "log.csv:3:1: error: the number '0.5 kWh' has a unit of energy, the rows before have power; "
      "expected one of them throughout\n");
}

TEST_CASE("layout 17: words for no value are marks of time") {
  CHECK(told(rows_of({"12", "unavailable", "unknown", "none", "null", "NaN", "n/a", "-", "--", "?",
                      "", "13"})) == R"(columns: separated by ';' (--delimiter)
time: 'time', with UTC or an offset (--columns)
values: 'power W' (--columns)
kind: power in W (--kind, --unit)
12 rows, 2 used, 10 no-value (line 3)
2024-07-01 00:00:00 12
2024-07-01 00:01:00 nan
2024-07-01 00:02:00 nan
2024-07-01 00:03:00 nan
2024-07-01 00:04:00 nan
2024-07-01 00:05:00 nan
2024-07-01 00:06:00 nan
2024-07-01 00:07:00 nan
2024-07-01 00:08:00 nan
2024-07-01 00:09:00 nan
2024-07-01 00:10:00 nan
2024-07-01 00:11:00 13
)");
}

TEST_CASE("values that no plug reads are marks of time, counted by reason") {
  CHECK(told(rows_of({"12", "-3", "1000000", "1000000.5", "1e300", "inf", "-", "14"})) ==
        R"(columns: separated by ';' (--delimiter)
time: 'time', with UTC or an offset (--columns)
values: 'power W' (--columns)
kind: power in W (--kind, --unit)
8 rows, 3 used, 1 negative (line 3), 2 too-high (line 5), 2 no-value (line 7)
2024-07-01 00:00:00 12
2024-07-01 00:01:00 nan
2024-07-01 00:02:00 1000000
2024-07-01 00:03:00 nan
2024-07-01 00:04:00 nan
2024-07-01 00:05:00 nan
2024-07-01 00:06:00 nan
2024-07-01 00:07:00 14
)");
}

TEST_CASE("layout 17: a zero and a high peak are values") {
  CHECK(values_of({"0", "11000", "0.0", "12"}) == "0 11000 0 12 ");
}

TEST_CASE("columns set apart by tabs, bars and several blanks") {
  CHECK(values_of({"12.5", "13"}, {}, "\t") == "12.5 13 ");
  CHECK(values_of({"12.5", "13"}, {}, " | ") == "12.5 13 ");
  CHECK(told("2024-07-01   00:00:00    12.5\n2024-07-01   00:01:00     3.5\n", berlin()) ==
        R"(columns: separated by blanks (--delimiter)
time: column 1 and column 2, without zone (--columns)
values: column 3 (--columns)
kind: power in W, since no unit is given (--kind, --unit)
2 rows, 2 used
2024-06-30 22:00:00 12.5
2024-06-30 22:01:00 3.5
)");
}

TEST_CASE("a decimal comma beside blanks or tabs does not set columns apart") {
  CHECK(readings_of("1719792000\t12,5\n1719792060\t3,25\n") ==
        "2024-07-01 00:00:00 12.5\n2024-07-01 00:01:00 3.25\n");
  CHECK(readings_of("1719792000 12,5\n1719792060 3,25\n") ==
        "2024-07-01 00:00:00 12.5\n2024-07-01 00:01:00 3.25\n");
}

TEST_CASE("a delimiter can be said") {
  CHECK(readings_of("1719792000:12.5\n1719792060:3.25\n", {.delimiter = ':'}) ==
        "2024-07-01 00:00:00 12.5\n2024-07-01 00:01:00 3.25\n");
}

TEST_CASE("a delimiter that sets nothing apart is told") {
  CHECK(told("1719792000,12.5\n1719792060,3.25\n", {.delimiter = ';'}) ==
        "log.csv:1:1: error: no row with a date and a number was found; the first line is "
        "'1719792000,12.5'; expected columns separated by ';' (--delimiter)\n");
}

TEST_CASE("quoted fields, blanks around fields and trailing delimiters") {
  CHECK(told("\"time\", \"power W\",\n\"2024-07-01T00:00:00Z\", \"12.5\" ,\n"
             "2024-07-01T00:01:00Z , 13.5 ,\n") == R"(columns: separated by ',' (--delimiter)
time: 'time', with UTC or an offset (--columns)
values: 'power W' (--columns)
kind: power in W (--kind, --unit)
2 rows, 2 used
2024-07-01 00:00:00 12.5
2024-07-01 00:01:00 13.5
)");
}

TEST_CASE("whole numbers for long, then a fraction: what a mark is shows when it comes") {
  std::string text = "time;power W\n";
  for (int i = 0; i < 100'100; ++i) text += fmt::format("{};0\n", 1'700'000'000 + i);
  CHECK(logged(text + "1700200000;12.5\n").readings.back().value == 12.5);
  CHECK(logged(text + "1700200000;12,5\n").readings.back().value == 12.5);
  CHECK(told(text + "1700200000;1.234\n") ==
        "log.csv:100102:1: error: the number '1.234' may be thousands or a fraction; say what the "
        "decimal mark is by --decimal . or --decimal ,\n");
  CHECK(told(text + "1700200000;12,5\n1700200001;12.5\n") ==
        "log.csv:100103:1: error: the number '12.5' is not written as those of the rows before; "
        "see --decimal\n");
}
