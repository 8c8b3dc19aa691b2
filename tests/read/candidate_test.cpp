#include "support.hpp"

using namespace wattweek::read_tests;

TEST_CASE("candidates and devices: each key and what it refuses") {
  const std::vector<Case> cases{
      {"a study has candidates",
       edited(kStudy, R"([[candidate]]
id = "one"
[[candidate.device]]
name = "big"
[candidate.device.watts]
idle = 10
[candidate.device.increments]
film = 3
cams = 1
[[candidate]]
id = "two"
[[candidate.device]]
profile = "box.toml"
)",
              ""),
       "study.toml:1:1: error: candidate is missing: expected at least one [[candidate]]"},
      {"candidates are not empty",
       edited(edited(kStudy, "months = 12", "candidate = []"), R"([[candidate]]
id = "one"
[[candidate.device]]
name = "big"
[candidate.device.watts]
idle = 10
[candidate.device.increments]
film = 3
cams = 1
[[candidate]]
id = "two"
[[candidate.device]]
profile = "box.toml"
)",
              ""),
       "study.toml:3:13: error: candidate = []: expected at least one [[candidate]]"},
      {"a candidate has an id",
       edited(kStudy, R"(id = "two"
)",
              ""),
       "study.toml:23:1: error: candidate.id is missing: expected an id in quotes: lower-case "
       "letters, digits, - and _"},
      {"ids of candidates are unique", edited(kStudy, R"(id = "two")", R"(id = "one")"),
       R"(study.toml:24:6: error: candidate.id = "one": the candidate at study.toml:15:6 has that id; expected one of its own)"},
      {"a candidate has a device",
       edited(kStudy, R"([[candidate.device]]
profile = "box.toml"
)",
              ""),
       "study.toml:23:1: error: candidate.device is missing: expected at least one "
       "[[candidate.device]]"},
      {"purchase and resale are numbers", edited(kStudy, R"(id = "one")", R"(id = "one"
name = 1
purchase = "199 EUR"
resale = [3, 2])"),
       R"(study.toml:16:8: error: candidate.name = 1: expected the candidate's name in quotes
study.toml:17:12: error: candidate.purchase = "199 EUR": expected a number or a range [low, high], in the tariff's currency; write 199 (the number alone; the tariff's currency says the rest)
study.toml:18:10: error: candidate.resale = [3, 2]: the range is upside down; write [2, 3])"},
      {"a later cost has a year and a cost",
       edited(kStudy, R"([[candidate.device]]
name = "big")",
              R"([[candidate.later]]
[[candidate.device]]
name = "big")"),
       "study.toml:16:1: error: candidate.later.cost is missing: expected a number or a range "
       "[low, high], in the tariff's currency\nstudy.toml:16:1: error: candidate.later.year is "
       "missing: expected the year at whose end it falls due"},
      {"a later cost is of some year",
       edited(kStudy, R"([[candidate.device]]
name = "big")",
              R"([[candidate.later]]
year = 0
cost = "x"
name = ""
[[candidate.device]]
name = "big")"),
       R"(study.toml:17:8: error: candidate.later.year = 0: expected a whole number from 1 to 1000, counted from the start
study.toml:18:8: error: candidate.later.cost = "x": expected a number or a range [low, high], in the tariff's currency
study.toml:19:8: error: candidate.later.name = "": the text is empty; expected what is paid for, in quotes)"},
      {"a later cost is within the finance years",
       edited(edited(kStudy, R"([[workload]]
id = "film")",
                     R"([finance]
years = 5
[[workload]]
id = "film")"),
              R"([[candidate.device]]
name = "big")",
              R"([[candidate.later]]
year = 6
cost = 10
[[candidate.device]]
name = "big")"),
       "study.toml:19:8: error: candidate.later.year = 6: expected a whole number from 1 to 5, "
       "within finance.years"},
      {"a profile is a path or tables",
       edited(kStudy, R"(profile = "box.toml")", R"(profile = "box.toml"
capacity = 3)"),
       R"(study.toml:26:1: error: candidate.device.profile = "box.toml": the device has tables of a profile as well; expected either the path or the tables)"},
      {"a profile is one of them",
       edited(kStudy, R"(profile = "box.toml"
)",
              ""),
       R"(study.toml:25:1: error: candidate.device.profile is missing: expected profile = "PATH", or idle in [candidate.device.watts])"},
      {"a profile is a text",
       edited(kStudy, R"(profile = "box.toml")", "profile = { watts = { idle = 3 } }"),
       R"(study.toml:26:11: error: candidate.device.profile = { watts = { idle = 3 } }: expected the path of a profile file in quotes, or "shipped:NAME"; the profile's own tables go into the device itself: [candidate.device.watts])"},
      {"a profile must be there", edited(kStudy, R"("box.toml")", R"("bax.toml")"),
       R"(study.toml:26:11: error: candidate.device.profile = "bax.toml": there is no such file)"},
      {"the mistakes of a profile file are told at its own lines",
       edited(kStudy, R"("box.toml")", R"("wrong.toml")"),
       "wrong.toml:2:8: error: watts.idle = -1: expected a number or a range [low, high], not "
       "below 0, in W"},
      {"a syntax error of a profile file is told at its own line",
       edited(kStudy, R"("box.toml")", R"("broken.toml")"),
       "broken.toml:1:7: error: cannot read this table header: expected ']', found the end of the "
       "line"},
      {"two devices of one file tell its mistakes once",
       edited(kStudy, R"(profile = "box.toml")", R"(profile = "wrong.toml"
[[candidate.device]]
profile = "wrong.toml")"),
       "wrong.toml:2:8: error: watts.idle = -1: expected a number or a range [low, high], not "
       "below 0, in W"},
      {"mistakes of the study come before those of its files",
       edited(edited(edited(kStudy, R"("box.toml")", R"("wrong.toml")"), "film = 3", "film = -3"),
              R"("day.toml")", R"("dear.toml")"),
       R"(study.toml:21:8: error: candidate.device.increments.film = -3: expected a number or a range [low, high], not below 0, in W
dear.toml:1:1: error: band is missing: expected at least one [[band]] with name and price
dear.toml:1:12: error: currency = "euro": expected the three capital letters of a currency (ISO 4217) in quotes, such as "EUR"
wrong.toml:2:8: error: watts.idle = -1: expected a number or a range [low, high], not below 0, in W)"},
      {"an inline profile is checked like a file",
       edited(kStudy, "idle = 10", "idle = 10\nbusy = 9"),
       "study.toml:20:8: error: candidate.device.watts.busy = 9: lies below "
       "candidate.device.watts.idle = 10; expected at least that"},
      {"a device has a name", edited(kStudy, R"(name = "big")", "name = true"),
       "study.toml:17:8: error: candidate.device.name = true: expected the device's name in "
       "quotes"},
      {"a count is whole", edited(kStudy, R"(name = "big")", R"(name = "big"
count = 0)"),
       "study.toml:18:9: error: candidate.device.count = 0: expected a whole number from 1 to "
       "1000000"},
      {"a rest has a state", edited(kStudy, R"(name = "big")", R"(name = "big"
rest = [ { hours = "01:00-05:00" } ])"),
       R"(study.toml:18:10: error: candidate.device.rest.state is missing: expected "sleep" or "off")"},
      {"a rest is one of two states", edited(kStudy, R"(name = "big")", R"(name = "big"
rest = [ { state = "asleep" } ])"),
       R"(study.toml:18:20: error: candidate.device.rest.state = "asleep": expected "sleep" or "off"; did you mean "sleep"?)"},
      {"sleep needs its watts, in the device", edited(kStudy, R"(name = "big")", R"(name = "big"
rest = [ { state = "sleep" } ])"),
       R"(study.toml:18:20: error: candidate.device.rest.state = "sleep": the device's profile has no sleep watts; expected sleep = WATTS under [candidate.device.watts])"},
      {"sleep needs its watts, in the file",
       edited(kStudy, R"(profile = "box.toml")", R"(profile = "box.toml"
rest = [ { state = "sleep" } ])"),
       R"(study.toml:27:20: error: candidate.device.rest.state = "sleep": the device's profile has no sleep watts; expected sleep = WATTS under [watts] of box.toml)"},
      {"rests are an array", edited(kStudy, R"(name = "big")", R"(name = "big"
rest = { state = "off" })"),
       R"(study.toml:18:8: error: { state = "off" } is one table: expected [[candidate.device.rest]] with double brackets, once for each, or an array [ {...} ])"},
  };
  check_cases(cases, read_study);
}
