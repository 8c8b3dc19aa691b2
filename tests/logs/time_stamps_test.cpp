// How logs write the time of a row.

#include <doctest/doctest.h>

#include "told.hpp"

using namespace wattweek::logs;

TEST_CASE("layout 1: day-first date and time in one field, a short and a long mean, CRLF") {
  CHECK(told("05/12/2011 17:00:01;26;26\r\n05/12/2011 17:00:02;28;26\r\n"
             "05/12/2011 17:00:03;27;26\r\n",
             berlin(), "plug_2011.12.05.csv") == R"(columns: separated by ';' (--delimiter)
time: column 1, without zone (--columns)
dates: day first, as in the file's name (--date-order)
values: column 2 (--columns)
kind: power in W, since no unit is given (--kind, --unit)
3 rows, 3 used
2011-12-05 16:00:01 26
2011-12-05 16:00:02 28
2011-12-05 16:00:03 27
)");
}

TEST_CASE("layout 2: epoch seconds and watts, set apart by a blank") {
  CHECK(told("1361117974 41\n1361117980 42\n1361117986 40\n") ==
        R"(columns: separated by blanks (--delimiter)
time: column 1, seconds since 1970 (--columns)
values: column 2 (--columns)
kind: power in W, since no unit is given (--kind, --unit)
3 rows, 3 used
2013-02-17 16:19:34 41
2013-02-17 16:19:40 42
2013-02-17 16:19:46 40
)");
}

TEST_CASE("layout 2: epoch seconds and watts, set apart by a comma") {
  CHECK(told("1361117974,41\n1361117980,42\n1361117986,40\n") ==
        R"(columns: separated by ',' (--delimiter)
time: column 1, seconds since 1970 (--columns)
values: column 2 (--columns)
kind: power in W, since no unit is given (--kind, --unit)
3 rows, 3 used
2013-02-17 16:19:34 41
2013-02-17 16:19:40 42
2013-02-17 16:19:46 40
)");
}

TEST_CASE("layout 3: epoch milliseconds") {
  CHECK(told("1361117974123,41.2\n1361117975123,41.3\n1361117976123,40.9\n") ==
        R"(columns: separated by ',' (--delimiter)
time: column 1, milliseconds since 1970 (--columns)
values: column 2 (--columns)
kind: power in W, since no unit is given (--kind, --unit)
3 rows, 3 used
2013-02-17 16:19:34.123000 41.2
2013-02-17 16:19:35.123000 41.3
2013-02-17 16:19:36.123000 40.9
)");
}

TEST_CASE("layout 3: epoch seconds with a fraction") {
  CHECK(told("1361117974.5 41.2\n1361117975.25 41.3\n1361117976 40.9\n") ==
        R"(columns: separated by blanks (--delimiter)
time: column 1, seconds since 1970 (--columns)
values: column 2 (--columns)
kind: power in W, since no unit is given (--kind, --unit)
3 rows, 3 used
2013-02-17 16:19:34.500000 41.2
2013-02-17 16:19:35.250000 41.3
2013-02-17 16:19:36 40.9
)");
}

TEST_CASE("epoch microseconds and nanoseconds are told by their size") {
  CHECK(readings_of("1361117974123456,41\n1361117975123456,42\n") ==
        "2013-02-17 16:19:34.123456 41\n2013-02-17 16:19:35.123456 42\n");
  CHECK(readings_of("1361117974123456789,41\n1361117975123456789,42\n") ==
        "2013-02-17 16:19:34.123456 41\n2013-02-17 16:19:35.123456 42\n");
}

TEST_CASE("layout 4: ISO 8601 with an offset, over the end of summer time") {
  CHECK(told("time,power\n2024-10-27T02:30:00+02:00,12.4\n2024-10-27T02:30:00+01:00,12.5\n"
             "2024-10-27T03:30:00+01:00,12.6\n") == R"(columns: separated by ',' (--delimiter)
time: 'time', with UTC or an offset (--columns)
values: 'power' (--columns)
kind: power in W, since no unit is given (--kind, --unit)
3 rows, 3 used
2024-10-27 00:30:00 12.4
2024-10-27 01:30:00 12.5
2024-10-27 02:30:00 12.6
)");
}

TEST_CASE("layout 4: ISO 8601 with Z and a fraction") {
  CHECK(told("time,power\n2024-10-27T00:30:00.25Z,12.4\n2024-10-27T00:30:01.250Z,12.5\n") ==
        R"(columns: separated by ',' (--delimiter)
time: 'time', with UTC or an offset (--columns)
values: 'power' (--columns)
kind: power in W, since no unit is given (--kind, --unit)
2 rows, 2 used
2024-10-27 00:30:00.250000 12.4
2024-10-27 00:30:01.250000 12.5
)");
}

TEST_CASE("layout 4: ISO 8601 with a blank, without seconds and without zone") {
  CHECK(told("time,power\n2024-07-01 02:30,12.4\n2024-07-01 02:31,12.5\n", berlin()) ==
        R"(columns: separated by ',' (--delimiter)
time: 'time', without zone (--columns)
values: 'power' (--columns)
kind: power in W, since no unit is given (--kind, --unit)
2 rows, 2 used
2024-07-01 00:30:00 12.4
2024-07-01 00:31:00 12.5
)");
}

TEST_CASE("layout 5: a Z is believed to be UTC whatever the zone of the week") {
  CHECK(told("time,power\n2007-02-01T00:00:00Z,300\n2007-02-01T00:01:00Z,310\n", berlin()) ==
        R"(columns: separated by ',' (--delimiter)
time: 'time', with UTC or an offset (--columns)
values: 'power' (--columns)
kind: power in W, since no unit is given (--kind, --unit)
2 rows, 2 used
2007-02-01 00:00:00 300
2007-02-01 00:01:00 310
)");
}

TEST_CASE(
    "layout 6: date and clock time in two fields, without leading zeros, with other quantities") {
  CHECK(told("Date;Time;Active_power_kW;Reactive_power_kvar;Voltage;Intensity_A\n"
             "1/2/2007;00:00:00;0.326;0.128;243.150;1.400\n"
             "1/2/2007;00:01:00;0.326;0.130;243.320;1.400\n"
             "1/2/2007;00:02:00;?;?;?;?\n"
             "13/2/2007;00:00:00;0.324;0.132;243.510;1.400\n",
             berlin()) == R"(columns: separated by ';' (--delimiter)
time: 'Date' and 'Time', without zone (--columns)
dates: day first, since no other order fits (--date-order)
values: 'Active_power_kW' (--columns)
kind: power in kW (--kind, --unit)
4 rows, 3 used, 1 no-value (line 4)
2007-01-31 23:00:00 326
2007-01-31 23:01:00 326
2007-01-31 23:02:00 nan
2007-02-12 23:00:00 324
)");
}

TEST_CASE("layout 23: dates of a statistics package, no leading zero, blank for missing") {
  CHECK(told("time,kw\n01jan2022 00:00:00,.0820199966\n01jan2022 00:15:00,\n"
             "01jan2022 00:30:00,.0839999966\n",
             berlin()) == R"(columns: separated by ',' (--delimiter)
time: 'time', without zone (--columns)
values: 'kw' (--columns)
kind: power in kW (--kind, --unit)
3 rows, 2 used, 1 no-value (line 3)
2021-12-31 23:00:00 82.0199966
2021-12-31 23:15:00 nan
2021-12-31 23:30:00 83.9999966
)");
}

TEST_CASE("layout 22: month by name and a clock of twelve hours") {
  CHECK(told("Start date;End date;Power [W]\n"
             "\"Jan 1, 2023 12:00 AM\";\"Jan 1, 2023 12:15 AM\";41\n"
             "\"Jan 1, 2023 12:15 AM\";\"Jan 1, 2023 12:30 AM\";-\n"
             "\"Jan 1, 2023 12:30 PM\";\"Jan 1, 2023 12:45 PM\";43\n"
             "\"Jan 1, 2023 1:00 PM\";\"Jan 1, 2023 1:15 PM\";44\n",
             berlin()) == R"(columns: separated by ';' (--delimiter)
time: 'Start date', without zone (--columns)
values: 'Power [W]' (--columns)
kind: power in W (--kind, --unit)
4 rows, 3 used, 1 no-value (line 3)
2022-12-31 23:00:00 41
2022-12-31 23:15:00 nan
2023-01-01 11:30:00 43
2023-01-01 12:00:00 44
)");
}

TEST_CASE("a narrow blank may stand before AM and PM") {
  CHECK(readings_of("time\tpower\n1/13/23, 12:00:00\xe2\x80\xaf"
                    "AM\t41\n"
                    "1/13/23, 1:30:00\xe2\x80\xafp.m.\t42\n",
                    berlin()) == "2023-01-12 23:00:00 41\n2023-01-13 12:30:00 42\n");
}

TEST_CASE("24:00 is the end of its day") {
  CHECK(readings_of("time;power\n31.12.2024 23:59;5\n31.12.2024 24:00;6\n", berlin()) ==
        "2024-12-31 22:59:00 5\n2024-12-31 23:00:00 6\n");
}

TEST_CASE("compact dates and clock times") {
  CHECK(readings_of("20240701T023000Z,5\n20240701T023100Z,6\n") ==
        "2024-07-01 02:30:00 5\n2024-07-01 02:31:00 6\n");
  CHECK(readings_of("202407010230;5\n202407010231;6\n", berlin()) ==
        "2024-07-01 00:30:00 5\n2024-07-01 00:31:00 6\n");
  CHECK(readings_of("20240701 0230;5\n20240701 0231;6\n", berlin()) ==
        "2024-07-01 00:30:00 5\n2024-07-01 00:31:00 6\n");
}

TEST_CASE("offsets with and without colon, in hours alone, and behind a blank") {
  CHECK(readings_of("2024-07-01 02:30:00 +0200,15\n2024-07-01 02:31:00+02:00,6\n"
                    "2024-07-01 02:32:00+02,7\n2024-07-01 00:33:00 UTC,8\n"
                    "2024-07-01 06:04:00+05:30,9\n2024-06-30 21:05:00 -0330,10\n") ==
        "2024-07-01 00:30:00 15\n2024-07-01 00:31:00 6\n2024-07-01 00:32:00 7\n"
        "2024-07-01 00:33:00 8\n2024-07-01 00:34:00 9\n2024-07-01 00:35:00 10\n");
}

TEST_CASE("the names of Europe's zones tell the two passes of the doubled hour apart") {
  CHECK(told("time;power\n27.10.2024 02:30 CEST;5\n27.10.2024 02:30 CET;6\n27.10.2024 03:30 "
             "CET;7\n") == R"(columns: separated by ';' (--delimiter)
time: 'time', with UTC or an offset (--columns)
dates: day first, since no other order fits (--date-order)
values: 'power' (--columns)
kind: power in W, since no unit is given (--kind, --unit)
3 rows, 3 used
2024-10-27 00:30:00 5
2024-10-27 01:30:00 6
2024-10-27 02:30:00 7
)");
}

TEST_CASE("a weekday may stand before the date") {
  CHECK(readings_of("Mon 2024-07-01 02:30;5\nMonday, 2024-07-01 02:31;6\n", berlin()) ==
        "2024-07-01 00:30:00 5\n2024-07-01 00:31:00 6\n");
}

TEST_CASE("day, name of the month, year") {
  CHECK(readings_of("27 Oct 2024 12:30:00\t5\n27-Oct-24 12:31\t6\n", berlin()) ==
        "2024-10-27 11:30:00 5\n2024-10-27 11:31:00 6\n");
}

TEST_CASE("layout 26: a day over 12 shows what comes first") {
  CHECK(told("time;power\n12/05/2011 10:00:00;5\n13/05/2011 10:00:00;6\n", berlin()) ==
        R"(columns: separated by ';' (--delimiter)
time: 'time', without zone (--columns)
dates: day first, since no other order fits (--date-order)
values: 'power' (--columns)
kind: power in W, since no unit is given (--kind, --unit)
2 rows, 2 used
2011-05-12 08:00:00 5
2011-05-13 08:00:00 6
)");
  CHECK(told("time;power\n05/12/2011 10:00:00;5\n05/13/2011 10:00:00;6\n", berlin()) ==
        R"(columns: separated by ';' (--delimiter)
time: 'time', without zone (--columns)
dates: month first, since no other order fits (--date-order)
values: 'power' (--columns)
kind: power in W, since no unit is given (--kind, --unit)
2 rows, 2 used
2011-05-12 08:00:00 5
2011-05-13 08:00:00 6
)");
}

TEST_CASE("layout 26: hours that go on from day to day show what comes first") {
  std::string text;
  for (int hour = 0; hour < 72; ++hour) {
    text += fmt::format("{:02}/04/2024 {:02}:00,5{}\n", 8 + hour / 24, hour % 24, hour % 2);
  }
  CHECK(told("time,power\n" + text, berlin()) == R"(columns: separated by ',' (--delimiter)
time: 'time', without zone (--columns)
dates: day first, since the rows then follow each other (--date-order)
values: 'power' (--columns)
kind: power in W, since no unit is given (--kind, --unit)
72 rows, 72 used
2024-04-07 22:00:00 50
...
2024-04-10 21:00:00 51
)");
}

TEST_CASE("layout 26: two readings of a date are refused") {
  CHECK(told("05/12/2011 17:00:01;26\n05/12/2011 17:00:02;28\n", berlin()) ==
        "log.csv:1:1: error: the date '05/12/2011 17:00:01' may be day first or month first; say "
        "which by --date-order dmy or --date-order mdy\n");
  CHECK(told("05-12-11 17:00:01;26\n05-12-11 17:00:02;28\n", berlin()) ==
        "log.csv:1:1: error: the date '05-12-11 17:00:01' may be day first, month first or year "
        "first; say which by --date-order dmy, --date-order mdy or --date-order ymd\n");
}

TEST_CASE("layout 26: readings of every month, or of every day, may be either") {
  CHECK(told("01/01/2011 12:00;26\n01/02/2011 12:00;28\n01/03/2011 12:00;28\n", berlin()) ==
        "log.csv:1:1: error: the date '01/01/2011 12:00' may be day first or month first; say "
        "which by --date-order dmy or --date-order mdy\n");
}

TEST_CASE("the order of dates can be said") {
  const std::string log = "05/12/2011 17:00:01;26\n05/12/2011 17:00:02;28\n";
  CHECK(readings_of(log, berlin({.date_order = DateOrder::mdy})) ==
        "2011-05-12 15:00:01 26\n2011-05-12 15:00:02 28\n");
  CHECK(readings_of("11-05-12 17:00:01;26\n11-05-12 17:00:02;28\n",
                    berlin({.date_order = DateOrder::ymd})) ==
        "2011-05-12 15:00:01 26\n2011-05-12 15:00:02 28\n");
}

TEST_CASE("dots between the numbers of a date are day first, as is usual with dots") {
  CHECK(told("01.12.2014 10:15;15\n01.12.2014 10:16;16\n", berlin()) ==
        R"(columns: separated by ';' (--delimiter)
time: column 1, without zone (--columns)
dates: day first, as is usual with dots (--date-order)
values: column 2 (--columns)
kind: power in W, since no unit is given (--kind, --unit)
2 rows, 2 used
2014-12-01 09:15:00 15
2014-12-01 09:16:00 16
)");
}

TEST_CASE("a date order that was said and fits no row names the row") {
  CHECK(told("13/05/2011 10:00:00;5\n14/05/2011 10:00:00;6\n",
             berlin({.date_order = DateOrder::mdy})) ==
        "log.csv:1:1: error: the time '13/05/2011 10:00:00' is not of the kind that the rows "
        "before have; see --date-order\n");
}

TEST_CASE("layout 21: UTC and local time side by side, and an area to be chosen") {
  CHECK(told("HourUTC;HourLocal;Area;Power_W;Price\n"
             "2022-12-31 23:00;2023-01-01 00:00;N1;14,950000;2,010000\n"
             "2022-12-31 23:00;2023-01-01 00:00;N2;15,950000;2,020000\n"
             "2023-01-01 00:00;2023-01-01 01:00;N1;16,950000;2,030000\n"
             "2023-01-01 00:00;2023-01-01 01:00;N2;17,950000;2,040000\n",
             {.where = {{"Area", "N2"}}}) == R"(columns: separated by ';' (--delimiter)
time: 'HourUTC', in UTC, as its heading says (--columns)
values: 'Power_W' (--columns)
numbers: decimal comma (--decimal)
kind: power in W (--kind, --unit)
2 rows, 2 used
2022-12-31 23:00:00 15.95
2023-01-01 00:00:00 17.95
)");
}

TEST_CASE("two columns of times without a heading are refused") {
  CHECK(told("2022-12-31 23:00;2023-01-01 00:00;14,9\n2023-01-01 00:00;2023-01-01 01:00;15,9\n"
             "2023-01-01 02:00;2023-01-01 03:00;15,9\n",
             berlin()) ==
        "log.csv:1:18: error: several columns hold times: column 1, column 2; say which one by "
        "--columns time=NAME\n");
}

TEST_CASE("an epoch that moves is taken before a clock time that names no zone") {
  CHECK(told("2024-07-01 02:30:00,1719793800,41\n2024-07-01 02:30:10,1719793810,42\n") ==
        R"(columns: separated by ',' (--delimiter)
time: column 2, seconds since 1970 (--columns)
values: column 3 (--columns)
kind: power in W, since no unit is given (--kind, --unit)
2 rows, 2 used
2024-07-01 00:30:00 41
2024-07-01 00:30:10 42
)");
}

TEST_CASE("clock times without zone need one") {
  CHECK(told("time,power\n2024-07-01 02:30,12.4\n2024-07-01 02:31,12.5\n") ==
        "log.csv:2:1: error: the times in 'time' name no zone; say where the clock hangs by "
        "--zone, such as --zone Europe/Dublin\n");
}

TEST_CASE("layout 20: clock times alone are refused") {
  CHECK(told("00:15;10\n00:30;11\n00:45;12\n", berlin()) ==
        "log.csv:1:1: error: there are clock times, but no dates; expected readings with "
        "date and time\n");
}

TEST_CASE("layout 19: a row for each day is refused") {
  CHECK(told("2024-01-01,0.1,0.01,0.0,0.2\n2024-01-02,0.1,0.01,0.0,0.2\n", berlin()) ==
        "log.csv:1:1: error: column 1 holds dates without a clock time; a fit needs to know the "
        "hours: expected readings with date and time\n");
}

TEST_CASE("layout 25: totals of months or days alone are refused") {
  CHECK(told("2024-03;11.7\n2024-04;12.7\n", berlin()) ==
        "log.csv:1:1: error: no row with a date and a number was found; the first line is "
        "'2024-03;11.7'; expected columns separated by commas, semicolons, tabs or blanks, or "
        "JSON\n");
  CHECK(told("2024-03-01;11.7\n2024-03-02;12.7\n", berlin()) ==
        "log.csv:1:1: error: column 1 holds dates without a clock time; a fit needs to know the "
        "hours: expected readings with date and time\n");
}
