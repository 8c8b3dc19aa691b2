#include "support.hpp"

using namespace wattweek::read_tests;

TEST_CASE("a tariff: each key and what it refuses") {
  const std::vector<Case> cases{
      {"a currency is needed",
       edited(kTariff, R"(currency = "EUR"
)",
              ""),
       R"(day.toml:1:1: error: currency is missing: expected the three capital letters of a currency (ISO 4217) in quotes, such as "EUR")"},
      {"a currency has three letters", edited(kTariff, R"("EUR")", R"("euro")"),
       R"(day.toml:1:12: error: currency = "euro": expected the three capital letters of a currency (ISO 4217) in quotes, such as "EUR")"},
      {"a currency is in capitals", edited(kTariff, R"("EUR")", R"("eur")"),
       R"(day.toml:1:12: error: currency = "eur": expected the three capital letters of a currency (ISO 4217) in quotes, such as "EUR"; write "EUR")"},
      {"a currency is a text", edited(kTariff, R"("EUR")", "978"),
       R"(day.toml:1:12: error: currency = 978: expected the three capital letters of a currency (ISO 4217) in quotes, such as "EUR")"},
      {"a sign is no code", edited(kTariff, R"("EUR")", R"("€")"),
       R"(day.toml:1:12: error: currency = "€": expected the three capital letters of a currency (ISO 4217) in quotes, such as "EUR")"},
      {"tax is not below 0", edited(kTariff, "tax = 0.2", "tax = -0.2"),
       "day.toml:2:7: error: tax = -0.2: expected a number or a range [low, high], not below 0, as "
       "a fraction (0.05 is 5 %)"},
      {"standing charges are numbers", edited(kTariff, "tax = 0.2", R"(standing_per_day = "0,30"
standing_per_month = [2, 1])"),
       R"(day.toml:2:20: error: standing_per_day = "0,30": expected a number or a range [low, high], in the tariff's currency; write 0.3 (with a decimal point)
day.toml:3:22: error: standing_per_month = [2, 1]: the range is upside down; write [1, 2])"},
      {"a minimum is not below 0", edited(kTariff, "tax = 0.2", "minimum_per_month = -1"),
       "day.toml:2:21: error: minimum_per_month = -1: expected a number or a range [low, high], "
       "not below 0, in the tariff's currency"},
      {"holidays are dates", edited(kTariff, "tax = 0.2", R"(holidays = ["2027-01-01", 2027])"),
       R"(day.toml:2:13: error: holidays = "2027-01-01": expected an array of dates without quotes, such as [2027-01-01, 2027-12-25]; write 2027-01-01 without quotes
day.toml:2:27: error: holidays = 2027: expected an array of dates without quotes, such as [2027-01-01, 2027-12-25])"},
      {"holidays are an array", edited(kTariff, "tax = 0.2", "holidays = 2027-01-01"),
       "day.toml:2:12: error: holidays = 2027-01-01: expected an array of dates without quotes, "
       "such as [2027-01-01, 2027-12-25]"},
      {"holidays have no time", edited(kTariff, "tax = 0.2", "holidays = [2027-01-01T00:00:00]"),
       "day.toml:2:13: error: holidays = 2027-01-01T00:00:00: expected an array of dates without "
       "quotes, such as [2027-01-01, 2027-12-25]"},
      {"holidays count as a day of the week",
       edited(kTariff, "tax = 0.2", R"(holidays_as = "sunday")"),
       R"(day.toml:2:15: error: holidays_as = "sunday": "sunday" is not a day, did you mean "sun"? Expected a day of the week: "mon", "tue", "wed", "thu", "fri", "sat" or "sun")"},
      {"all is no day of the week", edited(kTariff, "tax = 0.2", R"(holidays_as = "all")"),
       R"(day.toml:2:15: error: holidays_as = "all": "all" is not a day; expected a day of the week: "mon", "tue", "wed", "thu", "fri", "sat" or "sun")"},
      {"there are bands or blocks",
       edited(kTariff, R"([[band]]
name = "night"
price = 0.2
hours = "22:00-06:00"
[[band]]
name = "day"
price = 0.3
)",
              ""),
       "day.toml:1:1: error: band is missing: expected at least one [[band]] with name and price"},
      {"bands are not empty",
       edited(kTariff, R"(tax = 0.2
[[band]]
name = "night"
price = 0.2
hours = "22:00-06:00"
[[band]]
name = "day"
price = 0.3
)",
              "band = []\n"),
       "day.toml:2:8: error: band = []: expected at least one [[band]]"},
      {"a band has a name",
       edited(kTariff, R"(name = "night"
)",
              ""),
       "day.toml:3:1: error: band.name is missing: expected the band's name in quotes"},
      {"a band has a price", edited(kTariff, "price = 0.2\n", ""),
       "day.toml:3:1: error: band.price is missing: expected a number or a range [low, high], in "
       "currency per kWh"},
      {"a name of a band is a text", edited(kTariff, R"(name = "night")", R"(name = "")"),
       R"(day.toml:4:8: error: band.name = "": the text is empty; expected the band's name in quotes)"},
      {"band names are unique", edited(kTariff, R"(name = "day")", R"(name = "night")"),
       R"(day.toml:8:8: error: band.name = "night": the band at day.toml:4:8 has that name; expected one of its own)"},
      {"a price is a number", edited(kTariff, "price = 0.3", R"(price = "high")"),
       R"(day.toml:9:9: error: band.price = "high": expected a number or a range [low, high], in currency per kWh)"},
      {"a window is given by its keys or in when",
       edited(kTariff, R"(hours = "22:00-06:00")", R"(hours = "22:00-06:00"
when = [ { days = "sun" } ])"),
       "day.toml:7:1: error: band.when: the band has days, hours, months or dates of its own as "
       "well; expected either these or when"},
      {"when is not empty", edited(kTariff, R"(hours = "22:00-06:00")", "when = []"),
       R"(day.toml:6:8: error: band.when = []: expected at least one window, such as [ { days = "sat,sun" } ])"},
      {"when holds windows",
       edited(kTariff, R"(hours = "22:00-06:00")", R"(when = ["22:00-06:00"])"),
       R"(day.toml:6:9: error: band.when = "22:00-06:00": expected tables [[band.when]], or an array [ {...} ])"},
      {"when is an array",
       edited(kTariff, R"(hours = "22:00-06:00")", R"(when = { hours = "22:00-06:00" })"),
       R"(day.toml:6:8: error: { hours = "22:00-06:00" } is one table: expected [[band.when]] with double brackets, once for each, or an array [ {...} ])"},
      {"when is no text", edited(kTariff, R"(hours = "22:00-06:00")", R"(when = "22:00-06:00")"),
       R"(day.toml:6:8: error: band.when = "22:00-06:00": expected tables [[band.when]], or an array [ {...} ])"},
      {"a window in when knows four keys",
       edited(kTariff, R"(hours = "22:00-06:00")", R"(when = [ { day = "sun", name = "x" } ])"),
       "day.toml:6:12: error: unknown key band.when.day: did you mean days?\nday.toml:6:25: error: "
       "unknown key band.when.name: name belongs to the top of the file (before the first "
       "[header]) or [[band]]; a key written after [[band.when]] belongs to that header"},
      {"a single band in single brackets",
       edited(edited(kTariff, R"([[band]]
name = "night"
price = 0.2
hours = "22:00-06:00"
)",
                     ""),
              "[[band]]", "[band]"),
       "day.toml:3:1: error: [band] is one table: expected [[band]] with double brackets, once for "
       "each, or an array [ {...} ]"},
      {"a gap between the bands is named", edited(kTariff, "price = 0.3", R"(price = 0.3
hours = "06:00-21:30")"),
       "day.toml:3:1: error: band: no band holds at 2000-01-01 21:30 local time; expected one at "
       "every instant, such as a last band without days, hours, months and dates"},
      {"a gap on some weekday is found", edited(kTariff, "price = 0.3", R"(price = 0.3
days = "mon-fri,sun")"),
       "day.toml:3:1: error: band: no band holds at 2000-01-01 06:00 local time; expected one at "
       "every instant, such as a last band without days, hours, months and dates"},
      {"a gap on a leap day is found", edited(kTariff, "price = 0.3", R"(price = 0.3
when = [ {months = "jan,mar-dec"}, {dates = "2001-01-01..2099-12-31"} ])"),
       "day.toml:3:1: error: band: no band holds at 2000-02-01 06:00 local time; expected one at "
       "every instant, such as a last band without days, hours, months and dates"},
      {"a gap on 29 February alone is found",
       edited(edited(kTariff, R"(hours = "22:00-06:00")", R"(dates = "2028-01-01..2028-02-28")"),
              "price = 0.3", R"(price = 0.3
dates = "2028-03-01..2028-12-31")"),
       "day.toml:3:1: error: band: no band holds at 2028-02-29 00:00 local time; expected one at "
       "every instant, such as a last band without days, hours, months and dates"},
      {"a gap on a holiday alone is found, whose eve is no Saturday",
       edited(
           edited(edited(kTariff, "tax = 0.2", "holidays = [2031-05-01]\nholidays_as = \"sun\""),
                  R"(hours = "22:00-06:00")", R"(when = [ { days = "sat", hours = "22:00-06:00" },
         { days = "sun", hours = "06:00-24:00" } ])"),
           "price = 0.3", R"(price = 0.3
days = "mon-sat")"),
       "day.toml:4:1: error: band: no band holds at 2031-05-01 00:00 local time; expected one at "
       "every instant, such as a last band without days, hours, months and dates"},
      {"where every window has dates only they are looked at",
       edited(edited(kTariff, R"(hours = "22:00-06:00")", R"(dates = "2027-01-01..2027-06-30")"),
              "price = 0.3", R"(price = 0.3
dates = "2027-07-02..2027-12-31")"),
       "day.toml:3:1: error: band: no band holds at 2027-07-01 00:00 local time; expected one at "
       "every instant, such as a last band without days, hours, months and dates"},
      {"a gap in a far year is found where dates name it",
       edited(kTariff, "price = 0.3", R"(price = 0.3
when = [ {months = "jan-nov"}, {dates = "2000-01-01..2061-12-30"}, {dates = "2062-01-01..2062-01-02"} ])"),
       "day.toml:3:1: error: band: no band holds at 2061-12-31 06:00 local time; expected one at "
       "every instant, such as a last band without days, hours, months and dates"},
  };
  check_cases(cases, read_tariff);
}
