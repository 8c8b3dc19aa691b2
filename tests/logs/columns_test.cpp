// Headings, columns, and rows of several devices.

#include <doctest/doctest.h>

#include "told.hpp"

using namespace wattweek::logs;

TEST_CASE("layout 7: voltage, current in mA and power, with headings") {
  CHECK(told("time,voltage V,current mA,power W\n2024-07-01 00:00:00,229.8,182,38.1\n"
             "2024-07-01 00:00:01,229.9,183,38.3\n",
             berlin()) == R"(columns: separated by ',' (--delimiter)
time: 'time', without zone (--columns)
values: 'power W' (--columns)
kind: power in W (--kind, --unit)
2 rows, 2 used
2024-06-30 22:00:00 38.1
2024-06-30 22:00:01 38.3
)");
}

TEST_CASE("layout 7: voltage, current and power without headings are refused") {
  CHECK(told("2024-07-01 00:00:00,229.8,182,38.1\n2024-07-01 00:00:01,229.9,183,38.3\n"
             "2024-07-01 00:00:02,229.7,190,41.3\n2024-07-01 00:00:03,229.7,180,37.3\n",
             berlin()) ==
        "log.csv:1:31: error: several columns may hold what was measured: column 3, column 4; say "
        "which one by --columns time=NAME,power=NAME or energy=NAME\n");
}

TEST_CASE("a column can be said by its number or its heading") {
  const std::string log = "time;main;second\n2024-07-01T00:00:00Z;5;7\n2024-07-01T00:00:05Z;6;70\n";
  CHECK(readings_of(log, {.power_column = "second"}) ==
        "2024-07-01 00:00:00 7\n2024-07-01 00:00:05 70\n");
  CHECK(readings_of(log, {.power_column = "2"}) ==
        "2024-07-01 00:00:00 5\n2024-07-01 00:00:05 6\n");
}

TEST_CASE("columns that are not there are told with those that are") {
  const std::string log = "time;power\n2024-07-01T00:00:00Z;5\n2024-07-01T00:00:05Z;6\n";
  CHECK(told(log, {.power_column = "watts"}) ==
        "log.csv:1:1: error: --columns power: there is no column 'watts'; there are 'time', "
        "'power'\n");
  CHECK(told(log, {.energy_column = "3"}) ==
        "log.csv:1:1: error: --columns energy: there is no column '3'; there are 'time', "
        "'power'\n");
  CHECK(told(log, {.time_column = "at"}) ==
        "log.csv:1:1: error: --columns time: there is no column 'at'; there are 'time', "
        "'power'\n");
  CHECK(told(log, {.where = {{"device", "a"}}}) ==
        "log.csv:1:1: error: --where: there is no column 'device'; there are 'time', 'power'\n");
}

TEST_CASE("a column that holds something else is told") {
  const std::string log =
      "time;power;state\n2024-07-01T00:00:00Z;5;on\n2024-07-01T00:00:05Z;6;on\n";
  CHECK(told(log, {.time_column = "power"}) ==
        "log.csv:2:22: error: --columns time: 'power' holds no date and time that could be read, "
        "such as '5'\n");
  CHECK(told(log, {.power_column = "state"}) ==
        "log.csv:2:24: error: --columns power: 'state' holds no numbers, but such as 'on'\n");
}

TEST_CASE("many columns that may be meant are told, the first twelve by name") {
  std::string names = "time", values = "2024-07-01T00:00:0";
  std::string one = values + "0Z", two = values + "1Z";
  for (int i = 1; i <= 15; ++i) {
    names += fmt::format(",c{}", i);
    one += fmt::format(",{}", 10 * i);
    two += fmt::format(",{}", 10 * i + i % 4);
  }
  CHECK(told(names + "\n" + one + "\n" + two + "\n", {.power_column = "x"}) ==
        "log.csv:1:1: error: --columns power: there is no column 'x'; there are 'time', 'c1', "
        "'c2', 'c3', 'c4', 'c5', 'c6', 'c7', 'c8', 'c9', 'c10', 'c11' and 4 more\n");
}

TEST_CASE("layout 12: registers without headings, a sequence number, empty columns, quoted text") {
  CHECK(told("3093,\"2025-10-07T20:21:11Z\",,\"OK\",2,,75.133,\n"
             "3094,\"2025-10-07T20:36:11Z\",,\"OK\",2,,75.233,\n"
             "3095,\"2025-10-07T20:51:11Z\",,\"OK\",2,,75.433,\n",
             {.kind = Kind::counter, .unit = Unit::kwh}) ==
        R"(columns: separated by ',' (--delimiter)
time: column 2, with UTC or an offset (--columns)
values: column 7 (--columns)
kind: a counter that runs on, in kWh (--kind, --unit)
3 rows, 3 used
2025-10-07 20:21:11 75133
2025-10-07 20:36:11 75233
2025-10-07 20:51:11 75433
)");
}

TEST_CASE("layout 12: import and export, of which the import counts") {
  CHECK(told("Number,Time,Status,Import total [kWh],Export total [kWh]\n"
             "1,2025-10-07T20:21:11Z,OK,75.133,1.2\n2,2025-10-07T20:36:11Z,OK,75.233,1.3\n") ==
        R"(columns: separated by ',' (--delimiter)
time: 'Time', with UTC or an offset (--columns)
values: 'Import total [kWh]' (--columns)
kind: a counter that runs on, in kWh (--kind, --unit)
2 rows, 2 used
2025-10-07 20:21:11 75133
2025-10-07 20:36:11 75233
)");
}

TEST_CASE("layout 12: registers of several tariffs are refused") {
  CHECK(told("Time,Import T1 kWh,Import T2 kWh\n2025-10-07T20:21:11Z,75.133,1.2\n"
             "2025-10-07T20:36:11Z,75.233,1.2\n") ==
        "log.csv:2:29: error: several columns may hold what was measured: 'Import T1 kWh', 'Import "
        "T2 kWh'; say which one by --columns time=NAME,power=NAME or energy=NAME\n");
}

TEST_CASE("layout 16: change-only rows of one device, with words between the numbers") {
  CHECK(told("entity_id,state,last_changed\nplug_3,12.5,2025-01-04T03:10:00Z\n"
             "plug_3,unavailable,2025-01-04T03:11:09Z\nplug_3,13.5,2025-01-04T03:20:30Z\n"
             "plug_3,12.5,2025-01-04T03:20:41Z\n") == R"(columns: separated by ',' (--delimiter)
time: 'last_changed', with UTC or an offset (--columns)
values: 'state' (--columns)
kind: power in W, since no unit is given (--kind, --unit)
4 rows, 3 used, 1 no-value (line 3)
2025-01-04 03:10:00 12.5
2025-01-04 03:11:09 nan
2025-01-04 03:20:30 13.5
2025-01-04 03:20:41 12.5
)");
}

TEST_CASE("layout 16: rows of several devices are refused, and one can be kept") {
  const std::string log =
      "entity_id,state,last_changed\nplug_3,12.5,2025-01-04T03:10:00Z\n"
      "plug_4,2,2025-01-04T03:10:07Z\nplug_3,13.5,2025-01-04T03:20:30Z\n"
      "plug_4,3,2025-01-04T03:30:07Z\n";
  CHECK(told(log) ==
        "log.csv:2:1: error: rows of several kinds stand among each other: 'entity_id' has plug_3, "
        "plug_4; say which to keep by --where entity_id=VALUE\n");
  CHECK(told(log, {.kind = Kind::power, .where = {{"entity_id", "plug_4"}}}) ==
        R"(columns: separated by ',' (--delimiter)
time: 'last_changed', with UTC or an offset (--columns)
values: 'state' (--columns)
kind: power in W, since no unit is given (--kind, --unit)
2 rows, 2 used
2025-01-04 03:10:07 2
2025-01-04 03:30:07 3
)");
  CHECK(told(log, {.where = {{"entity_id", "plug_5"}}}) ==
        "log.csv:1:1: error: --where: none of the first 4 rows has 'plug_5' in 'entity_id'; there "
        "are plug_3, plug_4\n");
}

TEST_CASE("devices that are told apart by numbers are refused, too") {
  CHECK(told("device_id,power,time\n3,12.5,2025-01-04T03:10:00Z\n4,2,2025-01-04T03:10:07Z\n"
             "3,13.5,2025-01-04T03:20:30Z\n4,3,2025-01-04T03:30:07Z\n") ==
        "log.csv:2:1: error: rows of several kinds stand among each other: 'device_id' has 3, 4; "
        "say which to keep by --where device_id=VALUE\n");
}

TEST_CASE("devices that follow each other in one file are refused, however late the second comes") {
  std::string log = "device,power,time\n";
  for (int i = 0; i < 6000; ++i) {
    log += fmt::format("plug_{},{},{}\n", i / 5000, 12 + i % 3, 1'700'000'000 + i % 5000);
  }
  CHECK(told(log) ==
        "log.csv:2:1: error: rows of several kinds stand among each other: 'device' has plug_0, "
        "plug_1; say which to keep by --where device=VALUE\n");
}

TEST_CASE("rows that are numbered have an id, too, which tells no devices apart") {
  CHECK(logged("id,power,time\n3,12.5,2025-01-04T03:10:00Z\n4,2,2025-01-04T03:10:07Z\n"
               "5,13.5,2025-01-04T03:20:30Z\n6,3,2025-01-04T03:30:07Z\n")
            .problems == "");
  std::string log = "id,power,time\n";
  for (int i = 0; i < 1000; ++i) log += fmt::format("{},{},{}\n", i, i % 7, 1'700'000'000 + i);
  CHECK(logged(log).problems == "");
}

TEST_CASE("many devices are refused, too, the first eight by name") {
  std::string log = "device,power,time\n";
  for (int i = 0; i < 1000; ++i) {
    log += fmt::format("{},{},{}\n", i / 4 % 60 + 1, i % 7, 1'700'000'000 + i);
  }
  CHECK(
      told(log) ==
      "log.csv:2:1: error: rows of several kinds stand among each other: 'device' has 1, 2, 3, 4, "
      "5, 6, 7, 8, ...; say which to keep by --where device=VALUE\n");
}

TEST_CASE("a column of on and off beside the watts tells no devices apart") {
  CHECK(readings_of("1700000000,12.5,on\n1700000010,0,off\n1700000020,12,on\n"
                    "1700000030,0,off\n1700000040,13,on\n") ==
        "2023-11-14 22:13:20 12.5\n2023-11-14 22:13:30 0\n2023-11-14 22:13:40 12\n"
        "2023-11-14 22:13:50 0\n2023-11-14 22:14:00 13\n");
}

TEST_CASE("layout 18: of several kinds of rows the one named power is kept") {
  CHECK(told("power,2018-10-01T00:05:00Z,412\nenergy,2018-10-01T00:05:00Z,10412\n"
             "power_max,2018-10-01T00:05:00Z,912\npower,2018-10-01T00:10:00Z,413\n"
             "energy,2018-10-01T00:10:00Z,10452\npower_max,2018-10-01T00:10:00Z,913\n") ==
        R"(columns: separated by ',' (--delimiter)
time: column 2, with UTC or an offset (--columns)
rows: those with 'power' in column 1 (--where 1=VALUE)
values: column 3 (--columns)
kind: power in W, since no unit is given (--kind, --unit)
2 rows, 2 used
2018-10-01 00:05:00 412
2018-10-01 00:10:00 413
)");
}

TEST_CASE("a column of units tells kinds of rows apart, or says the unit of all") {
  CHECK(told("time,value,unit\n2018-10-01T00:05:00Z,0.412,kW\n2018-10-01T00:10:00Z,0.5,kW\n") ==
        R"(columns: separated by ',' (--delimiter)
time: 'time', with UTC or an offset (--columns)
values: 'value' (--columns)
kind: power in kW (--kind, --unit)
2 rows, 2 used
2018-10-01 00:05:00 412
2018-10-01 00:10:00 500
)");
  CHECK(told("time,value,unit\n2018-10-01T00:05:00Z,412,W\n2018-10-01T00:05:00Z,7.5,kWh\n"
             "2018-10-01T00:10:00Z,413,W\n2018-10-01T00:10:00Z,7.6,kWh\n") ==
        R"(columns: separated by ',' (--delimiter)
time: 'time', with UTC or an offset (--columns)
rows: those with 'W' in 'unit' (--where unit=VALUE)
values: 'value' (--columns)
kind: power in W (--kind, --unit)
2 rows, 2 used
2018-10-01 00:05:00 412
2018-10-01 00:10:00 413
)");
}

TEST_CASE("a status of W is no unit") {
  CHECK(told("Zeit;Verbrauch;Status\n01.07.2024 00:00;0,5;W\n01.07.2024 00:15;0,6;W\n"
             "01.07.2024 00:30;0,4;W\n",
             berlin()) == R"(columns: separated by ';' (--delimiter)
time: 'Zeit', without zone (--columns)
dates: day first, as is usual with dots (--date-order)
values: 'Verbrauch' (--columns)
numbers: decimal comma (--decimal)
kind: energy of intervals in kWh, since no unit is given (--kind, --unit)
stamps: at the start of each interval, since the log begins at midnight (--stamps)
3 rows, 3 used
2024-06-30 22:00:00 500
2024-06-30 22:15:00 600
2024-06-30 22:30:00 400
)");
}

TEST_CASE("layout 22: heading in the local language, unit in brackets, from and to") {
  CHECK(told("Datum von;Datum bis;Verbrauch [kWh] Viertelstunden\n"
             "01.01.2023 00:00;01.01.2023 00:15;0,025\n01.01.2023 00:15;01.01.2023 00:30;-\n"
             "01.01.2023 00:30;01.01.2023 00:45;0,015\n01.01.2023 00:45;01.01.2023 01:00;0,016\n",
             berlin()) == R"(columns: separated by ';' (--delimiter)
time: 'Datum von', without zone (--columns)
dates: day first, as is usual with dots (--date-order)
values: 'Verbrauch [kWh] Viertelstunden' (--columns)
numbers: decimal comma (--decimal)
kind: energy of intervals in kWh (--kind, --unit)
stamps: at the start of each interval, as a heading says (--stamps)
4 rows, 3 used, 1 no-value (line 3)
2022-12-31 23:00:00 25
2022-12-31 23:15:00 nan
2022-12-31 23:30:00 15
2022-12-31 23:45:00 16
)");
}

TEST_CASE("from and to as clock times beside one date") {
  CHECK(told("Datum;Anfang;Ende;Verbrauch kWh\n01.01.2023;00:00;00:15;0,025\n"
             "01.01.2023;00:15;00:30;0,021\n01.01.2023;00:30;00:45;0,015\n",
             berlin()) == R"(columns: separated by ';' (--delimiter)
time: 'Datum' and 'Anfang', without zone (--columns)
dates: day first, as is usual with dots (--date-order)
values: 'Verbrauch kWh' (--columns)
numbers: decimal comma (--decimal)
kind: energy of intervals in kWh (--kind, --unit)
stamps: at the start of each interval, as a heading says (--stamps)
3 rows, 3 used
2022-12-31 23:00:00 25
2022-12-31 23:15:00 21
2022-12-31 23:30:00 15
)");
}

TEST_CASE("from and to as two dates and two clock times") {
  CHECK(told("Meter reading export\nStart Date,Start Time,End Date,End Time,Usage (kWh),Notes\n"
             "07/13/2024,00:00,07/13/2024,00:15,0.12,\n07/13/2024,00:15,07/13/2024,00:30,0.11,\n"
             "07/13/2024,00:30,07/13/2024,00:45,0.13,\n",
             berlin()) == R"(columns: separated by ',' (--delimiter)
time: 'Start Date' and 'Start Time', without zone (--columns)
dates: month first, since no other order fits (--date-order)
values: 'Usage (kWh)' (--columns)
kind: energy of intervals in kWh (--kind, --unit)
stamps: at the start of each interval, as a heading says (--stamps)
3 rows, 3 used
2024-07-12 22:00:00 120
2024-07-12 22:15:00 110
2024-07-12 22:30:00 130
)");
}

TEST_CASE("power is taken before energy, whatever its word grew at its beginning") {
  CHECK(readings_of("timestamp,apower,aenergy\n1719792000,12.5,100.1\n1719792010,12.6,100.2\n") ==
        "2024-07-01 00:00:00 12.5\n2024-07-01 00:00:10 12.6\n");
}

TEST_CASE("a plug's name with a unit is what it measures") {
  CHECK(readings_of("Time,Plug (W)\n1719792000,12.5 W\n1719792010,3.2 kW\n") ==
        "2024-07-01 00:00:00 12.5\n2024-07-01 00:00:10 3200\n");
}

TEST_CASE("registers by their codes, of which the import counts") {
  CHECK(told("time;1.8.0;2.8.0\n2024-07-01T00:00:00Z;100,1;3,2\n2024-07-01T00:15:00Z;100,2;3,2\n"
             "2024-07-01T00:30:00Z;100,4;3,2\n") == R"(columns: separated by ';' (--delimiter)
time: 'time', with UTC or an offset (--columns)
values: '1.8.0' (--columns)
numbers: decimal comma (--decimal)
kind: a counter that runs on, in kWh, since no unit is given (--kind, --unit)
3 rows, 3 used
2024-07-01 00:00:00 100100
2024-07-01 00:15:00 100200
2024-07-01 00:30:00 100400
)");
}

TEST_CASE("from and to in one field") {
  CHECK(told("Time (CET/CEST);Energy [kWh]\n01.01.2023 00:00 - 01.01.2023 00:15;0,025\n"
             "01.01.2023 00:15 - 01.01.2023 00:30;0,021\n"
             "01.01.2023 00:30 - 01.01.2023 00:45;0,015\n",
             berlin()) == R"(columns: separated by ';' (--delimiter)
time: 'Time (CET/CEST)', without zone (--columns)
dates: day first, as is usual with dots (--date-order)
values: 'Energy [kWh]' (--columns)
numbers: decimal comma (--decimal)
kind: energy of intervals in kWh (--kind, --unit)
stamps: at the start of each interval, since its end stands behind it (--stamps)
3 rows, 3 used
2022-12-31 23:00:00 25
2022-12-31 23:15:00 21
2022-12-31 23:30:00 15
)");
  CHECK(readings_of("Datum;Uhrzeit;Verbrauch (kWh)\n01.07.2024;00:00 - 00:15;0,12\n"
                    "01.07.2024;00:15 - 00:30;0,11\n01.07.2024;00:30 - 00:45;0,13\n",
                    berlin()) ==
        "2024-06-30 22:00:00 120\n2024-06-30 22:15:00 110\n2024-06-30 22:30:00 130\n");
}

TEST_CASE("a first row without value is a row, and the heading stands before it") {
  CHECK(told("device,time,power W\nplug_3,2024-07-01T00:00:00Z,\n"
             "plug_3,2024-07-01T00:01:00Z,13\nplug_3,2024-07-01T00:02:00Z,14\n") ==
        R"(columns: separated by ',' (--delimiter)
time: 'time', with UTC or an offset (--columns)
values: 'power W' (--columns)
kind: power in W (--kind, --unit)
3 rows, 2 used, 1 no-value (line 2)
2024-07-01 00:00:00 nan
2024-07-01 00:01:00 13
2024-07-01 00:02:00 14
)");
}

TEST_CASE("a first row that is wider than the others is a row") {
  CHECK(readings_of("time,power,comment\n2024-07-01 00:00:00,12,started, then slept\n"
                    "2024-07-01 00:01:00,13,\n2024-07-01 00:02:00,14,\n",
                    berlin()) ==
        "2024-06-30 22:00:00 12\n2024-06-30 22:01:00 13\n2024-06-30 22:02:00 14\n");
}

TEST_CASE("layout 8: start, end, duration, epoch, energy in and out") {
  CHECK(told("Start;End;Duration s;Timestamp;Import kWh;Export kWh\n"
             "2023-11-14 23:10;2023-11-14 23:15;300;1699999800;0.0032;0\n"
             "2023-11-14 23:15;2023-11-14 23:20;300;1700000100;0.0042;0\n"
             "2023-11-14 23:20;2023-11-14 23:25;300;1700000400;0.0022;0\n",
             berlin()) == R"(columns: separated by ';' (--delimiter)
time: 'Timestamp', seconds since 1970 (--columns)
values: 'Import kWh' (--columns)
kind: energy of intervals in kWh (--kind, --unit)
stamps: at the start of each interval, as a heading says (--stamps)
3 rows, 3 used
2023-11-14 22:10:00 3.2
2023-11-14 22:15:00 4.2
2023-11-14 22:20:00 2.2
)");
}

TEST_CASE("layout 8: an epoch of the end of the interval") {
  const Logged log = logged(
      "Start;End;Timestamp;Energy kWh\n2023-11-14 23:10;2023-11-14 23:15;1700000100;0.0032\n"
      "2023-11-14 23:15;2023-11-14 23:20;1700000400;0.0042\n"
      "2023-11-14 23:20;2023-11-14 23:25;1700000700;0.0022\n",
      berlin());
  CHECK(log.problems == "");
  CHECK(log.report.meaning.stamps == Stamps::end);
}

TEST_CASE("layout 27: a second heading in the middle, from exports that were joined") {
  CHECK(told("time,power\n2024-07-01T00:00:00Z,5\n2024-07-01T00:00:05Z,6\ntime,power\n"
             "2024-07-01T00:00:10Z,7\n") == R"(columns: separated by ',' (--delimiter)
time: 'time', with UTC or an offset (--columns)
values: 'power' (--columns)
kind: power in W, since no unit is given (--kind, --unit)
4 rows, 3 used, 1 repeated-heading (line 4)
2024-07-01 00:00:00 5
2024-07-01 00:00:05 6
2024-07-01 00:00:10 7
)");
}

TEST_CASE("layout 28: comment lines and a preamble of several lines") {
  CHECK(told("# a plug's log\nExport of a plug\nCreated;2024-07-02 10:00\n"
             "Period;2024-07-01 00:00;2024-07-02 00:00\n\nTime;Voltage V;Power W\n"
             "# begin\n2024-07-01 00:00;230;5\n2024-07-01 00:01;231;6\n",
             berlin()) == R"(columns: separated by ';' (--delimiter)
time: 'Time', without zone (--columns)
values: 'Power W' (--columns)
kind: power in W (--kind, --unit)
2 rows, 2 used
2024-06-30 22:00:00 5
2024-06-30 22:01:00 6
)");
}

TEST_CASE("a heading in a comment, and a line of units below the heading") {
  CHECK(told("# time, power_kW\n1700000000, 0.5\n1700000010, 0.6\n") ==
        R"(columns: separated by ',' (--delimiter)
time: 'time', seconds since 1970 (--columns)
values: 'power_kW' (--columns)
kind: power in kW (--kind, --unit)
2 rows, 2 used
2023-11-14 22:13:20 500
2023-11-14 22:13:30 600
)");
  CHECK(told("time;load\n-;kW\n1700000000;0.5\n1700000010;0.6\n") ==
        R"(columns: separated by ';' (--delimiter)
time: 'time', seconds since 1970 (--columns)
values: 'load [kW]' (--columns)
kind: power in kW (--kind, --unit)
2 rows, 2 used
2023-11-14 22:13:20 500
2023-11-14 22:13:30 600
)");
}

TEST_CASE("footers and stray lines are rows without time") {
  CHECK(told("time;power\n2024-07-01T00:00:00Z;5\n2024-07-01T00:00:05Z;6\nSum;11\n"
             "1970-01-01T00:00:07Z;4\n") == R"(columns: separated by ';' (--delimiter)
time: 'time', with UTC or an offset (--columns)
values: 'power' (--columns)
kind: power in W, since no unit is given (--kind, --unit)
4 rows, 2 used, 2 no-time (line 4)
2024-07-01 00:00:00 5
2024-07-01 00:00:05 6
)");
}

TEST_CASE("rows that are too short are marks of time") {
  CHECK(told("time;power;x\n2024-07-01T00:00:00Z;5;1\n2024-07-01T00:00:05Z\n"
             "2024-07-01T00:00:10Z;6;1\n") == R"(columns: separated by ';' (--delimiter)
time: 'time', with UTC or an offset (--columns)
values: 'power' (--columns)
kind: power in W, since no unit is given (--kind, --unit)
3 rows, 2 used, 1 no-value (line 3)
2024-07-01 00:00:00 5
2024-07-01 00:00:05 nan
2024-07-01 00:00:10 6
)");
}
