#include "support.hpp"

using namespace wattweek::read_tests;

TEST_CASE("unknown keys: the nearest, where they belong, or all that are known") {
  const std::vector<Case> cases{
      {"a misspelt key", edited(kStudy, "months = 12", "mouths = 12"),
       "study.toml:3:1: error: unknown key mouths: did you mean months?"},
      {"a key of nothing", edited(kStudy, "months = 12", "colour = 12"),
       "study.toml:3:1: error: unknown key colour: expected title, time_zone, start, months, "
       "tariff, holidays, holidays_as, baseline, household, carbon, finance, workload, away, "
       "candidate or meter"},
      {"a key of the top below a header",
       edited(kStudy, R"([[workload]]
id = "film")",
              R"([household]
kwh_per_year = 3000
baseline = "one"
[[workload]]
id = "film")"),
       "study.toml:7:1: error: unknown key household.baseline: baseline belongs to the top of the "
       "file (before the first [header]); a key written after [household] belongs to that header"},
      {"a key of a subtable above its header", edited(kStudy, R"(name = "big")", R"(name = "big"
idle = 10)"),
       "study.toml:18:1: error: unknown key candidate.device.idle: idle belongs to "
       "[candidate.device.watts]; a key written after [[candidate.device]] belongs to that header"},
      {"a key that is near one and known elsewhere", edited(kStudy, "units = 2", "unit = 2"),
       "study.toml:13:1: error: unknown key workload.use.unit: did you mean units? unit belongs to "
       "[[workload]]; a key written after [[workload.use]] belongs to that header"},
      {"a key known in several places", edited(kStudy, R"(id = "two")", R"(id = "two"
days = "mon")"),
       "study.toml:25:1: error: unknown key candidate.days: days belongs to [[workload.use]], "
       "[[candidate.device.rest]], [[tariff.band]] or [[tariff.band.when]]; a key written after "
       "[[candidate]] belongs to that header"},
      {"a table without its parent",
       edited(kStudy, "[[workload.use]]\nunits = 2", "[[use]]\nunits = 2"),
       "study.toml:10:1: error: workload.use is missing: expected at least one "
       "[[workload.use]]\nstudy.toml:12:3: error: unknown key use: write [[workload.use]]"},
      {"a profile table at the top",
       edited(kStudy, R"([[workload]]
id = "film")",
              R"([watts]
idle = 3
[[workload]]
id = "film")"),
       "study.toml:5:2: error: unknown key watts: write [candidate.device.watts]"},
      {"bands at the top",
       edited(kStudy, R"([[workload]]
id = "film")",
              R"([[band]]
name = "a"
[[workload]]
id = "film")"),
       "study.toml:5:3: error: unknown key band: write [[tariff.band]]"},
      {"kilowatts in the key", edited(kStudy, "idle = 10", "idle_kw = 0.01"),
       "study.toml:18:1: error: candidate.device.watts.idle is missing: expected a number or a "
       "range [low, high], not below 0, in W, or at_load or week in its place\nstudy.toml:19:1: "
       "error: "
       "unknown key candidate.device.watts.idle_kw: write idle, it counts W, and 1 kW is 1000 W"},
      {"watts in the key", edited(kStudy, "idle = 10", "idle = 10\nbusy_w = 20"),
       "study.toml:20:1: error: unknown key candidate.device.watts.busy_w: write busy, it counts "
       "W"},
      {"volt-amperes in the key", edited(kStudy, "idle = 10", "idle = 10\nbusy_va = 20"),
       "study.toml:20:1: error: unknown key candidate.device.watts.busy_va: write busy, it counts "
       "W, real power, not volt-amperes"},
      {"several at once, in file order",
       edited(edited(edited(kStudy, "months = 12", "mouths = 12"), "units = 2", "unitz = 2"),
              "film = 3", "film = { each = 3, hall = 4 }"),
       "study.toml:3:1: error: unknown key mouths: did you mean months?\nstudy.toml:13:1: error: "
       "unknown key workload.use.unitz: did you mean units?\nstudy.toml:21:20: error: unknown key "
       "candidate.device.increments.film.hall: expected first, each, table, load or group"},
  };
  check_cases(cases, read_study);
}

TEST_CASE("keys of another kind of file, and units in keys") {
  const std::vector<Case> cases{
      {"a study is no tariff", edited(kTariff, "tax = 0.2", R"(time_zone = "Etc/UTC")"),
       "day.toml:2:1: error: unknown key time_zone: time_zone belongs to a study file"},
      {"a profile is no tariff", edited(kTariff, "tax = 0.2", "[watts]\nidle = 3"),
       "day.toml:2:2: error: unknown key watts: watts belongs to a profile file"},
      {"cents in the key", edited(kTariff, "price = 0.3", "price = 0.3\nprice_ct = 30"),
       "day.toml:10:1: error: unknown key band.price_ct: write price, it counts whole units of the "
       "currency, not cents"},
      {"percent in the key", edited(kTariff, "tax = 0.2", "tax_percent = 20"),
       "day.toml:2:1: error: unknown key tax_percent: write tax, it is a fraction: 0.05 is 5 %"},
      {"the price is per kWh already", edited(kTariff, "price = 0.3", "price_per_kwh = 0.3"),
       "day.toml:7:1: error: band.price is missing: expected a number or a range [low, high], in "
       "currency per kWh\nday.toml:9:1: error: unknown key band.price_per_kwh: write price, it is "
       "per kWh already"},
      {"one key below the wrong header", edited(kTariff, "price = 0.3", R"(price = 0.3
currency = "EUR")"),
       "day.toml:10:1: error: unknown key band.currency: currency belongs to the top of the file "
       "(before the first [header]); a key written after [[band]] belongs to that header"},
      {"a block key in a band", edited(kTariff, "price = 0.3", "price = 0.3\nup_to = 3"),
       "day.toml:10:1: error: unknown key band.up_to: up_to belongs to [[block]]; a key written "
       "after [[band]] belongs to that header"},
  };
  check_cases(cases, read_tariff);
}
