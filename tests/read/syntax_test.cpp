#include "support.hpp"

using namespace wattweek::read_tests;

TEST_CASE("syntax errors: what was mistyped, at its place") {
  const std::vector<Case> cases{
      {"a decimal comma", edited(kStudy, "months = 12", "x = 0,25"),
       "study.toml:3:6: error: x = 0,25: not a number as TOML writes it; write 0.25 (with a "
       "decimal point)"},
      {"a time without quotes", edited(kStudy, "months = 12", "hours = 22:00-06:00"),
       R"(study.toml:3:9: error: hours = 22:00-06:00: a time needs quotes; write hours = "22:00-06:00")"},
      {"one time without quotes", edited(kStudy, "months = 12", "at = 06:30"),
       R"(study.toml:3:11: error: at = 06:30: a time needs quotes; write at = "06:30")"},
      {"a time in an inline table",
       edited(kStudy, "months = 12", R"(when = [ { days = "sun", hours = 22:00-06:00 } ])"),
       R"(study.toml:3:34: error: hours = 22:00-06:00: a time needs quotes; write hours = "22:00-06:00")"},
      {"percent with a blank", edited(kStudy, "months = 12", "tax = 23 %"),
       "study.toml:3:10: error: tax = 23 %: not a number as TOML writes it; write 0.23 (a fraction "
       "is meant)"},
      {"percent", edited(kStudy, "months = 12", "tax = 23%"),
       "study.toml:3:9: error: tax = 23%: not a number as TOML writes it; write 0.23 (a fraction "
       "is meant)"},
      {"watts", edited(kStudy, "months = 12", "idle = 13.5 W"),
       "study.toml:3:13: error: idle = 13.5 W: not a number as TOML writes it; write 13.5 (watts "
       "are meant)"},
      {"kilowatts", edited(kStudy, "months = 12", "idle = 0.0135kW"),
       "study.toml:3:14: error: idle = 0.0135kW: not a number as TOML writes it; write 13.5 (watts "
       "are meant, 1 kW is 1000 W)"},
      {"cents", edited(kStudy, "months = 12", "price = 25 ct"),
       "study.toml:3:12: error: price = 25 ct: not a number as TOML writes it; write 0.25 (the "
       "price is in whole units of the currency, not in cents)"},
      {"euros", edited(kStudy, "months = 12", "price = 0.25 EUR"),
       "study.toml:3:14: error: price = 0.25 EUR: not a number as TOML writes it; write 0.25 (the "
       "number alone; the tariff's currency says the rest)"},
      {"a sign in front", edited(kStudy, "months = 12", "price = €0.25"),
       "study.toml:3:9: error: price = €0.25: not a number as TOML writes it; write 0.25"},
      {"volt-amperes", edited(kStudy, "months = 12", "idle = 20 VA"),
       "study.toml:3:11: error: idle = 20 VA: not a number as TOML writes it; volt-amperes are not "
       "watts: write the meter's real power, in W"},
      {"a word without quotes", edited(kStudy, "months = 12", "pattern = together"),
       R"(study.toml:3:12: error: pattern = together: text needs quotes; write pattern = "together")"},
      {"a word that starts like true", edited(kStudy, "months = 12", "pattern = tru"),
       R"(study.toml:3:14: error: pattern = tru: text needs quotes; write pattern = "tru")"},
      {"truth in capitals", edited(kStudy, "months = 12", "x = True"),
       R"(study.toml:3:5: error: x = True: text needs quotes; write x = "True")"},
      {"a zone without quotes", edited(kStudy, "months = 12", "zone = Europe/Dublin"),
       R"(study.toml:3:8: error: zone = Europe/Dublin: text needs quotes; write zone = "Europe/Dublin")"},
      {"a path without quotes", edited(kStudy, "months = 12", "path = ./day.toml"),
       R"(study.toml:3:8: error: path = ./day.toml: text needs quotes; write path = "./day.toml")"},
      {"days without quotes", edited(kStudy, "months = 12", "days = mon-fri"),
       R"(study.toml:3:8: error: days = mon-fri: text needs quotes; write days = "mon-fri")"},
      {"dates without quotes", edited(kStudy, "months = 12", "dates = 2027-01-01..2027-02-01"),
       R"(study.toml:3:9: error: dates = 2027-01-01..2027-02-01: dates need quotes; write dates = "2027-01-01..2027-02-01")"},
      {"a date of one digit", edited(kStudy, "months = 12", "first = 2027-1-1"),
       "study.toml:3:15: error: first = 2027-1-1: no date of the calendar; expected one such as "
       "2027-01-31"},
      {"a date with dots", edited(kStudy, "months = 12", "first = 01.01.2027"),
       "study.toml:3:10: error: first = 01.01.2027: no date of the calendar; expected one such as "
       "2027-01-31"},
      {"a date with slashes", edited(kStudy, "months = 12", "first = 1/1/2027"),
       "study.toml:3:10: error: first = 1/1/2027: no date of the calendar; expected one such as "
       "2027-01-31"},
      {"a date that does not exist", edited(kStudy, "months = 12", "first = 2027-02-30"),
       "study.toml:3:19: error: first = 2027-02-30: no date of the calendar; expected one such as "
       "2027-01-31"},
      {"a value that is missing", edited(kStudy, "months = 12", "months ="),
       "study.toml:3:9: error: months: the value is missing"},
      {"a line that is only a word", edited(kStudy, "months = 12", "months"),
       "study.toml:3:7: error: expected KEY = VALUE, [TABLE] or [[TABLE]], or a comment after #"},
      {"a colon for an equals sign", edited(kStudy, "months = 12", "months: 12"),
       "study.toml:3:7: error: write KEY = VALUE, with = in place of :"},
      {"a comment of another language", edited(kStudy, "months = 12", "// months"),
       "study.toml:3:1: error: a comment starts with #"},
      {"a comment with a semicolon", edited(kStudy, "months = 12", "; months"),
       "study.toml:3:1: error: a comment starts with #"},
      {"a key with a blank", edited(kStudy, "months = 12", "the months = 12"),
       "study.toml:3:5: error: a key has only the letters a-z and A-Z, digits, - and _, or stands "
       "in quotes"},
      {"a key with an umlaut", edited(kStudy, "months = 12", R"(währung = "EUR")"),
       "study.toml:3:2: error: a key has only the letters a-z and A-Z, digits, - and _, or stands "
       "in quotes"},
      {"a key that is missing", edited(kStudy, "months = 12", "= 12"),
       "study.toml:3:1: error: the key is missing: expected KEY = VALUE"},
      {"two equals signs", edited(kStudy, "months = 12", "months == 12"),
       "study.toml:3:9: error: months == 12: one = is enough"},
      {"typographic quotes", edited(kStudy, "months = 12", "title = “home”"),
       R"(study.toml:3:9: error: title = “home”: the quotes are typographic ones; write plain " instead)"},
      {"a text without its end", edited(kStudy, "months = 12", R"(title = "home)"),
       R"(study.toml:3:14: error: title = "home: the text has no closing quote)"},
      {"a text with another after it", edited(kStudy, "months = 12", R"(title = "home" "away")"),
       "study.toml:3:16: error: only a comment after # may follow on this line"},
      {"a header with a key after it",
       edited(kStudy, "months = 12", "[household] kwh_per_year = 9"),
       "study.toml:3:13: error: only a comment after # may follow on this line"},
      {"an unknown escape", edited(kStudy, "months = 12", R"(title = "C:\home")"),
       R"(study.toml:3:13: error: cannot read this string: unknown escape sequence '\h')"},
      {"an array without its end", edited(kStudy, "months = 12", "holidays = [2027-01-01"),
       "study.toml:4:1: error: an array lacks a comma or its closing ]"},
      {"an array without its comma", edited(kStudy, "months = 12", "x = [1 2]"),
       "study.toml:3:8: error: an array lacks a comma or its closing ]"},
      {"an inline table on two lines",
       edited(kStudy, "months = 12", R"(rest = { hours = "01:00-02:00",
 state = "off" })"),
       "study.toml:3:32: error: a table in braces stands on one line; for more lines give it a "
       "[header] of its own"},
      {"an inline table with a comma too many",
       edited(kStudy, "months = 12", R"(rest = { state = "off", })"),
       "study.toml:3:25: error: no comma is allowed before the closing }"},
      {"a header without its bracket", edited(kStudy, "months = 12", "[household"),
       "study.toml:3:11: error: cannot read this table header: expected ']', found the end of the "
       "line"},
      {"a header without a name", edited(kStudy, "months = 12", "[]"),
       "study.toml:3:2: error: a header needs a name"},
      {"a number that starts with 0", edited(kStudy, "months = 12", "months = 012"),
       "study.toml:3:13: error: months = 012: not a number as TOML writes it; write 12"},
      {"a number that starts with a point", edited(kStudy, "months = 12", "x = .5"),
       "study.toml:3:5: error: x = .5: not a number as TOML writes it; write 0.5"},
      {"a number that ends with a point", edited(kStudy, "months = 12", "x = 5."),
       "study.toml:3:7: error: x = 5.: not a number as TOML writes it; write 5"},
      {"a number that is too long", edited(kStudy, "months = 12", "months = 99999999999999999999"),
       "study.toml:3:30: error: cannot read this decimal integer: '99999999999999999999' is not "
       "representable in 64 bits"},
      {"a number that is too large", edited(kStudy, "months = 12", "x = 1e400"),
       "study.toml:3:10: error: cannot read this floating-point: '1e400' could not be interpreted "
       "as a value"},
      {"a semicolon at the end", edited(kStudy, "months = 12", "months = 12;"),
       "study.toml:3:12: error: a line ends without ;"},
      {"a semicolon after a text", edited(kStudy, "months = 12", R"(title = "home";)"),
       "study.toml:3:15: error: a line ends without ;"},
      {"a key given twice", edited(kStudy, "months = 12", "start = 2027-01-01"),
       "study.toml:3:9: error: the key start is given twice: expected it once in a table"},
      {"a table given twice",
       edited(kStudy, R"([[workload]]
id = "film")",
              R"([household]
[household]
[[workload]]
id = "film")"),
       "study.toml:6:1: error: [household]: this table is there already; expected it once, or "
       "[[household]] every time where there may be several"},
      {"an array of tables, then a table",
       edited(kStudy, R"([[candidate]]
id = "two")",
              R"([candidate]
id = "two")"),
       "study.toml:23:1: error: [candidate]: there are tables [[candidate]] already; expected "
       "[[candidate]] with double brackets"},
      {"a table, then an array of tables",
       edited(kStudy, R"([[candidate]]
id = "one")",
              R"([candidate]
id = "one")"),
       "study.toml:23:1: error: [[candidate]]: the table [candidate] is there already; expected "
       "[[candidate]] every time"},
      {"a table named like a key", edited(kStudy, "months = 12", "household = 3\n[household]"),
       "study.toml:4:1: error: [household]: there is a key of this name already; expected either "
       "the key or the table"},
      {"tables named like a key",
       edited(kStudy, R"(months = 12
tariff = "day.toml"
[[workload]]
id = "film")",
              R"(tariff = "day.toml"
workload = []
[[workload]]
id = "film")"),
       "study.toml:5:1: error: [[workload]]: there is a key of this name already; expected either "
       "the key or the table"},
      {"a dotted key through a key with a value",
       edited(kStudy, R"(tariff = "day.toml")", "tariff = \"day.toml\"\ntariff.tax = 0.1"),
       "study.toml:5:1: error: a key before the dot has a value already: expected either that "
       "value or keys below it"},
      {"nesting without end",
       edited(kStudy, "months = 12",
              "x = "
              "[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[["
              "[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[["
              "[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[["
              "[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[["),
       "study.toml:3:261: error: brackets are nested too deeply"},
      {"a key of many parts",
       edited(kStudy, "months = 12", "a.a.a.a.a.a.a.a.a.a.a.a.a.a.a.a.a.a.a.a = 1"),
       "study.toml:3:34: error: a key of more than 16 parts; no key here has more than 5"},
  };
  check_cases(cases, read_study);
}
