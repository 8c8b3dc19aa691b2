// Logs in JSON.

#include <doctest/doctest.h>

#include "told.hpp"

using namespace wattweek::logs;

TEST_CASE("layout 24: a list of objects with state, unit and time") {
  CHECK(told(R"([
  {"entity_id": "plug_3", "state": "12.5", "attributes": {"unit_of_measurement": "W"},
   "last_changed": "2025-01-04T03:10:00+00:00"},
  {"entity_id": "plug_3", "state": "unavailable", "attributes": {},
   "last_changed": "2025-01-04T03:11:09+00:00"},
  {"entity_id": "plug_3", "state": "13.5", "attributes": {"unit_of_measurement": "W"},
   "last_changed": "2025-01-04T03:20:30+00:00"}
])",
             {}, "log.json") == R"(time: 'last_changed', with UTC or an offset (--columns)
values: 'state' (--columns)
kind: power in W (--kind, --unit)
3 rows, 2 used, 1 no-value (line 5)
2025-01-04 03:10:00 12.5
2025-01-04 03:11:09 nan
2025-01-04 03:20:30 13.5
)");
}

TEST_CASE("layout 24: parallel arrays with a unit and a licence beside them") {
  CHECK(told(R"({"license": "free", "unix_seconds": [1700000000, 1700000900, 1700001800],
  "power": [0.25, null, 0.5], "unit": "kW"})",
             {}, "log.json") == R"(time: 'unix_seconds', seconds since 1970 (--columns)
values: 'power' (--columns)
kind: power in kW (--kind, --unit)
3 rows, 2 used, 1 no-value (line 2)
2023-11-14 22:13:20 250
2023-11-14 22:28:20 nan
2023-11-14 22:43:20 500
)");
}

TEST_CASE("layout 24: prices are read where they are called power") {
  const std::string log = R"({"unix_seconds":[1700000000,1700000900],"price":[12.5,13.5]})";
  CHECK(told(log) ==
        "log.csv:1:1: error: no column holds watts or kWh in most of its rows; there are "
        "'unix_seconds', 'price'; say which one does by --columns time=NAME,power=NAME or "
        "energy=NAME\n");
  CHECK(readings_of(log, {.power_column = "price"}) ==
        "2023-11-14 22:13:20 12.5\n2023-11-14 22:28:20 13.5\n");
}

TEST_CASE("rows within objects within an object") {
  CHECK(told(R"({"answer": {"device": {"id": 7},
  "data": [{"at": 1700000000, "reading": {"watts": 12.5}},
           {"at": 1700000010, "reading": {"watts": 13.5}}]}})") ==
        R"(time: 'at', seconds since 1970 (--columns)
values: 'reading.watts' (--columns)
kind: power in W (--kind, --unit)
2 rows, 2 used
2023-11-14 22:13:20 12.5
2023-11-14 22:13:30 13.5
)");
}

TEST_CASE("rows that are arrays of a time and a value") {
  CHECK(
      told(R"({"data": [[1700000000000, 12.5], [1700000010000, 13.5], [1700000020000, null]]})") ==
      R"(time: column 1, milliseconds since 1970 (--columns)
values: column 2 (--columns)
kind: power in W, since no unit is given (--kind, --unit)
3 rows, 2 used, 1 no-value (line 1)
2023-11-14 22:13:20 12.5
2023-11-14 22:13:30 13.5
2023-11-14 22:13:40 nan
)");
}

TEST_CASE("rows within lists within a list, the device named in the first alone") {
  CHECK(told(R"([[{"entity_id": "plug_3", "state": "12.5", "last_changed": "2025-01-04T03:10:00Z"},
  {"state": "13.5", "last_changed": "2025-01-04T03:10:10Z"}]])") ==
        R"(time: 'last_changed', with UTC or an offset (--columns)
values: 'state' (--columns)
kind: power in W, since no unit is given (--kind, --unit)
2 rows, 2 used
2025-01-04 03:10:00 12.5
2025-01-04 03:10:10 13.5
)");
}

TEST_CASE("an object in each line") {
  CHECK(told("{\"time\": 1700000000, \"power\": 12.5}\n{\"time\": 1700000010, \"power\": 13.5}\n"
             "\n{\"time\": 1700000020, \"power\": 14.5}\n") ==
        R"(time: 'time', seconds since 1970 (--columns)
values: 'power' (--columns)
kind: power in W, since no unit is given (--kind, --unit)
3 rows, 3 used
2023-11-14 22:13:20 12.5
2023-11-14 22:13:30 13.5
2023-11-14 22:13:40 14.5
)");
}

TEST_CASE("members that come and go, in any order") {
  CHECK(readings_of(R"([{"time": 1700000000, "power": 12.5},
  {"power": 13.5, "note": "x", "time": 1700000010},
  {"time": 1700000020}, {"time": 1700000030, "power": true, "more": [1, 2]},
  {"time": 1700000040, "power": 16}])") ==
        "2023-11-14 22:13:20 12.5\n2023-11-14 22:13:30 13.5\n2023-11-14 22:13:40 nan\n"
        "2023-11-14 22:13:50 nan\n2023-11-14 22:14:00 16\n");
}

TEST_CASE("JSON without rows") {
  CHECK(told("[]") == "log.csv:1:1: error: there are no rows in this log\n");
  CHECK(told("{}") == "log.csv:1:1: error: there are no rows in this log\n");
  CHECK(told("{\"unit\": \"W\"}") == "log.csv:1:1: error: there are no rows in this log\n");
}

TEST_CASE("JSON that is wrong is told with line and column") {
  CHECK(
      told("[{\"time\": 1700000000, \"power\": 12.5},\n {\"time\": 1700000010 \"power\": 13.5}]") ==
      "log.csv:2:22: error: this is no JSON: expected a comma, a colon, a value, or an end of the "
      "object or array\n");
  CHECK(told("[{\"time\": 1700000000, \"power\": 12.5},\n {\"time\": 17000") ==
        "log.csv:2:16: error: this is no JSON: it ends within an object, an array or a text\n");
  CHECK(told("[{\"time\": 1700000000, \"power\": 12.5}]\n7") ==
        "log.csv:2:1: error: this is no JSON: something stands behind its end\n");
}

TEST_CASE("JSON that is not in UTF-8 is told with its line") {
  CHECK(
      told(
          "[{\"time\": 1700000000, \"power\": 12.5},\n {\"time\": 1700000010, \"x\": \"\xed\"}]") ==
      "log.csv:2:1: error: this is no JSON: its texts are not in UTF-8\n");
}

TEST_CASE("arrays of different lengths are refused") {
  CHECK(
      told(R"({"time": [1700000000, 1700000010], "power": [1, 2, 3]})") ==
      "log.csv:1:1: error: the arrays 'time' and 'power' differ in length (2 and 3); expected one "
      "element in each for every row\n");
}

TEST_CASE("rows that are single values are refused") {
  CHECK(told("[1, 2, 3]") ==
        "log.csv:1:1: error: expected rows that are objects, such as {\"time\": ..., \"power\": "
        "...}, or arrays\n");
}
