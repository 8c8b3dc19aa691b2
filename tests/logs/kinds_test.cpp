// Power, energy of intervals or a counter; W, kW, Wh or kWh; stamps at the start or the end.

#include <doctest/doctest.h>

#include "told.hpp"

using namespace wattweek::logs;

namespace {

struct Rows {
  std::string heading = "time;value";
  int first_s = 1'700'006'400;  // 2023-11-15 00:00 UTC
  int step_s = 900;
};

std::string log_of(const std::vector<double>& values, const Rows& rows = {}) {
  std::string text = rows.heading.empty() ? "" : rows.heading + "\n";
  int at = rows.first_s;
  for (const double value : values) {
    text += utc_text(at * Microseconds{1'000'000}) + fmt::format(";{}\n", value);
    at += rows.step_s;
  }
  return text;
}

LogOptions utc(LogOptions options = {}) {
  options.zone = zone_of("Etc/UTC");
  return options;
}

// The line that says the kind, and the one that says the stamps; or what was refused.
std::string kind_of(const std::string& text, const LogOptions& options = utc()) {
  const Logged log = logged(text, options);
  std::string kind = log.problems;
  for (const std::string& line : log.report.inferred) {
    if (line.rfind("kind", 0) == 0 || line.rfind("stamps", 0) == 0) kind += line + "\n";
  }
  return kind;
}

std::vector<double> counted(std::size_t rows, double step, std::size_t restarts_every = 1'000'000) {
  std::vector<double> values;
  for (std::size_t i = 0; i < rows; ++i) {
    values.push_back(static_cast<double>(i % restarts_every + 1) * step);
  }
  return values;
}

}  // namespace

TEST_CASE("a unit in the heading says kind and unit") {
  const std::vector<double> values = {0.25, 0.5, 0.125, 0.5};
  CHECK(kind_of(log_of(values, {"time;load [kW]"})) == "kind: power in kW (--kind, --unit)\n");
  CHECK(kind_of(log_of(values, {"time;Watts"})) == "kind: power in W (--kind, --unit)\n");
  CHECK(kind_of(log_of(values, {"time;value (kWh)"})) ==
        "kind: energy of intervals in kWh (--kind, --unit)\n"
        "stamps: at the start of each interval, since the log begins at midnight (--stamps)\n");
  CHECK(kind_of(log_of(values, {"time;energy_wh"})) ==
        "kind: energy of intervals in Wh (--kind, --unit)\n"
        "stamps: at the start of each interval, since the log begins at midnight (--stamps)\n");
  CHECK(kind_of(log_of(counted(4, 0.1), {"time;Meter reading kWh"})) ==
        "kind: a counter that runs on, in kWh (--kind, --unit)\n");
}

TEST_CASE("watts and watt-hours are scaled from kW and kWh") {
  CHECK(logged(log_of({0.25, 0.5}, {"time;kW"}), utc()).readings[1].value == 500);
  CHECK(logged(log_of({0.25, 0.5, 0.25}, {"time;used kWh"}), utc()).readings[1].value == 500);
  CHECK(logged(log_of({250, 500, 250}, {"time;used Wh"}), utc()).readings[1].value == 500);
}

TEST_CASE("layout 9: energy of quarter-hours with stamps at the end, without headings") {
  const std::string log = "01.12.2014 00:15;0.15\n01.12.2014 00:30;0.17\n01.12.2014 00:45;0.12\n";
  CHECK(told(log, berlin()) ==
        "log.csv:1:18: error: column 2 may hold watts, or the energy of each interval; say which "
        "by --kind power or --kind energy\n");
  CHECK(told(log, berlin({.kind = Kind::energy})) == R"(columns: separated by ';' (--delimiter)
time: column 1, without zone (--columns)
dates: day first, as is usual with dots (--date-order)
values: column 2 (--columns)
kind: energy of intervals in kWh, since no unit is given (--kind, --unit)
stamps: at the end of each interval, since the log begins one interval after midnight (--stamps)
3 rows, 3 used
2014-11-30 23:15:00 150
2014-11-30 23:30:00 170
2014-11-30 23:45:00 120
)");
}

TEST_CASE("layout 10: hourly rows, then quarter-hours") {
  std::string log = "time;kWh\n";
  for (int h = 0; h < 24; ++h) log += fmt::format("30.11.2014 {:02}:00;0.4{}\n", h, h % 3);
  for (int q = 0; q < 8; ++q)
    log += fmt::format("01.12.2014 {:02}:{:02};0.1{}\n", q / 4, q % 4 * 15, q % 3);
  CHECK(told(log, berlin()) == R"(columns: separated by ';' (--delimiter)
time: 'time', without zone (--columns)
dates: day first, since no other order fits (--date-order)
values: 'kWh' (--columns)
kind: energy of intervals in kWh (--kind, --unit)
stamps: at the start of each interval, since the log begins at midnight (--stamps)
32 rows, 32 used
2014-11-29 23:00:00 400
...
2014-12-01 00:45:00 110
)");
}

TEST_CASE("stamps at the end are told by a first row one interval after midnight, or by 24:00") {
  CHECK(kind_of(log_of({0.25, 0.5, 0.125, 0.5}, {"time;kWh", 1'700'006'400 + 900})) ==
        "kind: energy of intervals in kWh (--kind, --unit)\n"
        "stamps: at the end of each interval, since the log begins one interval after midnight "
        "(--stamps)\n");
  CHECK(kind_of("t;kWh\n01.12.2014 10:15;0.15\n01.12.2014 24:00;0.17\n02.12.2014 00:15;0.12\n") ==
        "kind: energy of intervals in kWh (--kind, --unit)\n"
        "stamps: at the end of each interval, since there is a 24:00 (--stamps)\n");
}

TEST_CASE("stamps are told by headings") {
  CHECK(kind_of(log_of({0.25, 0.5, 0.125, 0.5}, {"period end;kWh", 1'700'008'000})) ==
        "kind: energy of intervals in kWh (--kind, --unit)\n"
        "stamps: at the end of each interval, as a heading says (--stamps)\n");
  CHECK(kind_of(log_of({0.25, 0.5, 0.125, 0.5}, {"interval start;kWh", 1'700'008'000})) ==
        "kind: energy of intervals in kWh (--kind, --unit)\n"
        "stamps: at the start of each interval, as a heading says (--stamps)\n");
}

TEST_CASE("stamps that may be start or end are refused") {
  CHECK(kind_of(log_of({0.25, 0.5, 0.125, 0.5}, {"time;kWh", 1'700'008'200})) ==
        "log.csv:2:1: error: a stamp may be the start or the end of the interval whose energy "
        "stands beside it; say which by --stamps start or --stamps end\n");
  CHECK(kind_of(log_of({0.25, 0.5, 0.125, 0.5}, {"time;kWh", 1'700'008'200}),
                utc({.stamps = Stamps::end})) ==
        "kind: energy of intervals in kWh (--kind, --unit)\n");
}

TEST_CASE("midnight of an offset in the stamps is a midnight") {
  CHECK(kind_of("time,kWh\n2024-07-01T00:00:00+02:00,0.5\n2024-07-01T01:00:00+02:00,0.6\n"
                "2024-07-01T02:00:00+02:00,0.3\n") ==
        "kind: energy of intervals in kWh (--kind, --unit)\n"
        "stamps: at the start of each interval, since the log begins at midnight (--stamps)\n");
}

TEST_CASE("midnight of stamps in UTC is that of the zone, and none without one") {
  const std::string log =
      "time,kWh\n2024-06-30T23:00:00Z,0.5\n2024-07-01T00:00:00Z,0.6\n"
      "2024-07-01T01:00:00Z,0.3\n";
  CHECK(kind_of(log, berlin()) ==
        "kind: energy of intervals in kWh (--kind, --unit)\n"
        "stamps: at the end of each interval, since the log begins one interval after midnight "
        "(--stamps)\n");
  CHECK(kind_of(log, {}) ==
        "log.csv:2:1: error: a stamp may be the start or the end of the interval whose energy "
        "stands beside it; say which by --stamps start or --stamps end\n");
}

TEST_CASE("layout 13: a counter in Wh, told by its size, over its wrap") {
  CHECK(told(log_of({99'940, 99'950, 99'970, 99'990, 99'999, 1, 20, 30}, {"time;counter Wh"}),
             utc()) == R"(columns: separated by ';' (--delimiter)
time: 'time', without zone (--columns)
values: 'counter Wh' (--columns)
kind: a counter that runs on, in Wh (--kind, --unit)
8 rows, 8 used
2023-11-15 00:00:00 99940
2023-11-15 00:15:00 99950
2023-11-15 00:30:00 99970
2023-11-15 00:45:00 99990
2023-11-15 01:00:00 99999
2023-11-15 01:15:00 1
2023-11-15 01:30:00 20
2023-11-15 01:45:00 30
)");
}

TEST_CASE("layout 13: a register of a house in Wh is no time") {
  CHECK(readings_of(log_of({45'000'100, 45'000'300, 45'000'500}, {"time;register Wh"}), utc()) ==
        "2023-11-15 00:00:00 45000100\n2023-11-15 00:15:00 45000300\n"
        "2023-11-15 00:30:00 45000500\n");
}

TEST_CASE("layout 14: a counter that restarts at every midnight is a counter") {
  CHECK(kind_of(log_of(counted(96, 0.25, 24), {"time;energy today kWh", 1'700'006'400, 3600})) ==
        "kind: a counter that runs on, in kWh (--kind, --unit)\n");
}

TEST_CASE("layout 15: a counter that jumps up is a counter, its jump is a reading") {
  CHECK(logged(log_of({33.0, 33.1, 46.7, 46.8, 46.9, 47.0, 47.1}, {"time;total kWh"}), utc())
            .readings[2]
            .value == doctest::Approx(46'700).epsilon(1e-12));
}

TEST_CASE("values that only rise, without heading, are a counter where they are many") {
  CHECK(kind_of(log_of(counted(40, 0.5), {""})) ==
        "kind: a counter that runs on, in kWh, since no unit is given (--kind, --unit)\n");
  CHECK(kind_of(log_of(counted(8, 0.5), {""})) ==
        "log.csv:1:21: error: column 2 may hold watts, or a counter that runs on; say which by "
        "--kind power or --kind counter\n");
}

TEST_CASE("energy or counter, where few rows only rise") {
  CHECK(kind_of(log_of({0.1, 0.2, 0.3}, {"time;consumption kWh"})) ==
        "log.csv:2:21: error: 'consumption kWh' may hold the energy of each interval, or a counter "
        "that runs on; say which by --kind energy or --kind counter\n");
}

TEST_CASE("watts or energy, where quarter-hours have no heading") {
  CHECK(kind_of(log_of({10, 12, 11, 10}, {""})) ==
        "log.csv:1:21: error: column 2 may hold watts, or the energy of each interval; say which "
        "by --kind power or --kind energy\n");
}

TEST_CASE("dense rows without heading are watts") {
  CHECK(kind_of(log_of({10, 12, 11, 10}, {"", 1'700'006'400, 10})) ==
        "kind: power in W, since no unit is given (--kind, --unit)\n");
}

TEST_CASE("Wh or kWh, where no unit is given: as a home can have used it") {
  const auto kind = [](const std::vector<double>& values) {
    return kind_of(log_of(values, {"time;energy"}));
  };
  CHECK(kind({0.15, 0.17, 0.12, 0.2}) ==
        "kind: energy of intervals in kWh, since no unit is given (--kind, --unit)\n"
        "stamps: at the start of each interval, since the log begins at midnight (--stamps)\n");
  CHECK(kind({150, 170, 120, 200}) ==
        "kind: energy of intervals in Wh, since no unit is given (--kind, --unit)\n"
        "stamps: at the start of each interval, since the log begins at midnight (--stamps)\n");
  CHECK(kind({2.5, 2.6, 2.4, 2.5}) ==
        "log.csv:2:21: error: 'energy' may be in kWh or in Wh; say which by --unit kWh or --unit "
        "Wh\n");
}

TEST_CASE("kind, unit and columns that were said count") {
  CHECK(kind_of(log_of({0.1, 0.2, 0.3}, {"time;consumption kWh"}), utc({.kind = Kind::counter})) ==
        "kind: a counter that runs on, in kWh (--kind, --unit)\n");
  CHECK(kind_of(log_of({10, 12, 11, 10}, {""}), utc({.unit = Unit::kw})) ==
        "kind: power in kW (--kind, --unit)\n");
  CHECK(kind_of(log_of({10, 12, 11, 10}, {""}), utc({.power_column = "2"})) ==
        "kind: power in W, since no unit is given (--kind, --unit)\n");
  CHECK(kind_of(log_of({10, 12, 11, 10}, {""}), utc({.kind = Kind::energy, .unit = Unit::wh})) ==
        "kind: energy of intervals in Wh (--kind, --unit)\n"
        "stamps: at the start of each interval, since the log begins at midnight (--stamps)\n");
}

TEST_CASE("a kind and a unit that contradict each other are refused") {
  CHECK(kind_of(log_of({0.1, 0.2, 0.1}, {"time;consumption kWh"}), utc({.kind = Kind::power})) ==
        "log.csv:2:21: error: 'consumption kWh' cannot be power in kWh; see --kind and --unit\n");
  CHECK(kind_of(log_of({0.1, 0.2, 0.1}, {"time;load"}),
                utc({.kind = Kind::counter, .unit = Unit::w})) ==
        "log.csv:2:21: error: 'load' cannot be energy in W; see --kind and --unit\n");
}

TEST_CASE("power is taken where a file has power and energy") {
  CHECK(told("time;Power W;Energy kWh\n2024-07-01T00:00:00Z;5;0.1\n2024-07-01T00:00:05Z;6;0.1\n") ==
        R"(columns: separated by ';' (--delimiter)
time: 'time', with UTC or an offset (--columns)
values: 'Power W' (--columns)
kind: power in W (--kind, --unit)
2 rows, 2 used
2024-07-01 00:00:00 5
2024-07-01 00:00:05 6
)");
  CHECK(readings_of("time;Power W;Total energy kWh\n2024-07-01T00:00:00Z;5;0.1\n"
                    "2024-07-01T00:00:05Z;6;0.2\n",
                    {.kind = Kind::counter}) ==
        "2024-07-01 00:00:00 100\n2024-07-01 00:00:05 200\n");
}

TEST_CASE("a file of one row is read, where its heading says what it is") {
  CHECK(told("time;Power W\n2024-07-01T00:00:00Z;5\n") == R"(columns: separated by ';' (--delimiter)
time: 'time', with UTC or an offset (--columns)
values: 'Power W' (--columns)
kind: power in W (--kind, --unit)
1 rows, 1 used
2024-07-01 00:00:00 5
)");
}
