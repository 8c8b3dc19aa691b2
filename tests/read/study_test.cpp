#include "support.hpp"

using namespace wattweek::read_tests;

TEST_CASE("a study: each key at its top and what it refuses") {
  const std::vector<Case> cases{
      {"a time zone is needed",
       edited(kStudy, R"(time_zone = "Etc/UTC"
)",
              ""),
       R"(study.toml:1:1: error: time_zone is missing: expected the name of a time zone in quotes, such as "Europe/Dublin")"},
      {"a time zone is a text", edited(kStudy, R"("Etc/UTC")", "0"),
       R"(study.toml:1:13: error: time_zone = 0: expected the name of a time zone in quotes, such as "Europe/Dublin")"},
      {"a time zone must exist", edited(kStudy, R"("Etc/UTC")", R"("Etc/UCT")"),
       R"(study.toml:1:13: error: time_zone = "Etc/UCT": no such time zone; did you mean "Etc/UTC"?)"},
      {"a start is needed", edited(kStudy, "start = 2027-01-01\n", ""),
       "study.toml:1:1: error: start is missing: expected the first day of a month, without "
       "quotes, such as 2027-01-01"},
      {"a start is a date without quotes", edited(kStudy, "2027-01-01", R"("2027-01-01")"),
       R"(study.toml:2:9: error: start = "2027-01-01": expected the first day of a month, without quotes, such as 2027-01-01; write 2027-01-01 without quotes)"},
      {"a start is a date", edited(kStudy, "2027-01-01", "2027"),
       "study.toml:2:9: error: start = 2027: expected the first day of a month, without quotes, "
       "such as 2027-01-01"},
      {"a start has no time", edited(kStudy, "2027-01-01", "2027-01-01T00:00:00Z"),
       "study.toml:2:9: error: start = 2027-01-01T00:00:00Z: expected the first day of a month, "
       "without quotes, such as 2027-01-01"},
      {"a start is the first of a month", edited(kStudy, "2027-01-01", "2027-01-15"),
       "study.toml:2:9: error: start = 2027-01-15: expected the first day of a month, without "
       "quotes, such as 2027-01-01; write 2027-01-01"},
      {"a study has at least one month", edited(kStudy, "months = 12", "months = 0"),
       "study.toml:3:10: error: months = 0: expected a whole number from 1 to 120, the calendar "
       "months of the study"},
      {"a study has at most 120 months", edited(kStudy, "months = 12", "months = 121"),
       "study.toml:3:10: error: months = 121: expected a whole number from 1 to 120, the calendar "
       "months of the study"},
      {"months are whole", edited(kStudy, "months = 12", "months = 12.0"),
       "study.toml:3:10: error: months = 12.0: expected a whole number from 1 to 120, the calendar "
       "months of the study"},
      {"months in quotes are a number in quotes", edited(kStudy, "months = 12", R"(months = "12")"),
       R"(study.toml:3:10: error: months = "12": expected a whole number from 1 to 120, the calendar months of the study; write 12)"},
      {"months as a filter do not belong here",
       edited(kStudy, "months = 12", R"(months = "apr-sep")"),
       R"(study.toml:3:10: error: months = "apr-sep": expected a whole number from 1 to 120; months is the length of the study here; as a filter it goes into a window, such as [[workload.use]])"},
      {"a title is a text", edited(kStudy, "months = 12", "title = 2027"),
       "study.toml:3:9: error: title = 2027: expected the study's title in quotes"},
      {"a tariff is needed",
       edited(kStudy, R"(tariff = "day.toml"
)",
              ""),
       R"(study.toml:1:1: error: tariff is missing: expected the path of a tariff file in quotes, "shipped:NAME", or a table [tariff])"},
      {"a tariff is a path or a table", edited(kStudy, R"(tariff = "day.toml")", "tariff = 3"),
       R"(study.toml:4:10: error: tariff = 3: expected the path of a tariff file in quotes, "shipped:NAME", or a table [tariff])"},
      {"a tariff must be there", edited(kStudy, R"("day.toml")", R"("night.toml")"),
       R"(study.toml:4:10: error: tariff = "night.toml": there is no such file)"},
      {"a tariff has a path", edited(kStudy, R"("day.toml")", R"("")"),
       R"(study.toml:4:10: error: tariff = "": the text is empty; expected the path of a tariff file in quotes, "shipped:NAME", or a table [tariff])"},
      {"the mistakes of a tariff file are told at its own lines",
       edited(kStudy, R"("day.toml")", R"("dear.toml")"),
       R"(dear.toml:1:1: error: band is missing: expected at least one [[band]] with name and price
dear.toml:1:12: error: currency = "euro": expected the three capital letters of a currency (ISO 4217) in quotes, such as "EUR")"},
      {"a gap in the tariff is told in its file", edited(kStudy, R"("day.toml")", R"("gap.toml")"),
       "gap.toml:2:1: error: band: no band holds at 2027-01-01 23:00 local time; expected one at "
       "every instant, such as a last band without days, hours, months and dates"},
      {"a gap in a tariff of the study is told there",
       edited(
           kStudy, R"(tariff = "day.toml")",
           R"(tariff = { currency = "EUR", band = [ { name = "a", price = 1, dates = "2027-01-01..2027-12-30" } ] })"),
       "study.toml:4:37: error: band: no band holds at 2027-12-31 00:00 local time; expected one "
       "at every instant, such as a last band without days, hours, months and dates"},
      {"two tariffs are one too many",
       edited(edited(kStudy, R"(tariff = "day.toml"
)",
                     ""),
              R"([[workload]]
id = "film")",
              R"([[tariff]]
currency = "EUR"
[[tariff.band]]
name = "a"
price = 1
[[workload]]
id = "film")"),
       "study.toml:4:1: error: [[tariff]] has double brackets: expected [tariff] with single ones, "
       "once"},
      {"holidays and the day they count as",
       edited(kStudy, "months = 12", R"(holidays = [2027-01-01, "x"]
holidays_as = "holiday")"),
       R"(study.toml:3:25: error: holidays = "x": expected an array of dates without quotes, such as [2027-01-01, 2027-12-25]
study.toml:4:15: error: holidays_as = "holiday": "holiday" is not a day; expected a day of the week: "mon", "tue", "wed", "thu", "fri", "sat" or "sun")"},
      {"a baseline is a candidate", edited(kStudy, "months = 12", R"(baseline = "twoo")"),
       R"(study.toml:3:12: error: baseline = "twoo": no candidate has this id, did you mean "two"?)"},
      {"a baseline is an id in quotes", edited(kStudy, "months = 12", "baseline = 1"),
       "study.toml:3:12: error: baseline = 1: expected the id of a candidate in quotes"},
  };
  check_cases(cases, read_study);
}
