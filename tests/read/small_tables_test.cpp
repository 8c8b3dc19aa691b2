#include "support.hpp"

using namespace wattweek::read_tests;

TEST_CASE("household, carbon, finance and meters: each key and what it refuses") {
  const std::vector<Case> cases{
      {"a year of the household is not below 0",
       edited(kStudy, R"([[workload]]
id = "film")",
              R"([household]
kwh_per_year = -1
[[workload]]
id = "film")"),
       "study.toml:6:16: error: household.kwh_per_year = -1: expected a number or a range [low, "
       "high], not below 0, in kWh"},
      {"either a year or twelve months",
       edited(kStudy, R"([[workload]]
id = "film")",
              R"([household]
kwh_per_year = 1
kwh_per_month = [1,1,1,1,1,1,1,1,1,1,1,1]
[[workload]]
id = "film")"),
       "study.toml:7:1: error: household.kwh_per_month: there is kwh_per_year as well; expected "
       "one of the two"},
      {"twelve months are twelve",
       edited(kStudy, R"([[workload]]
id = "film")",
              R"([household]
kwh_per_month = [1,1,1,1,1,1,1,1,1,1,1]
[[workload]]
id = "film")"),
       "study.toml:6:17: error: household.kwh_per_month = [1,1,1,1,1,1,1,1,1,1,1]: expected 12 "
       "numbers, January to December, not below 0, in kWh; there are 11"},
      {"twelve months are an array",
       edited(kStudy, R"([[workload]]
id = "film")",
              R"([household]
kwh_per_month = 300
[[workload]]
id = "film")"),
       "study.toml:6:17: error: household.kwh_per_month = 300: expected 12 numbers, January to "
       "December, not below 0, in kWh"},
      {"twelve months are numbers",
       edited(kStudy, R"([[workload]]
id = "film")",
              R"([household]
kwh_per_month = [1,1,1,1,1,1,1,1,1,[1,2],-1,true]
[[workload]]
id = "film")"),
       "study.toml:6:36: error: household.kwh_per_month = [1,2]: expected a single number, not "
       "below 0, in kWh\nstudy.toml:6:42: error: household.kwh_per_month = -1: expected a single "
       "number, not below 0, in kWh\nstudy.toml:6:45: error: household.kwh_per_month = true: "
       "expected a single number, not below 0, in kWh"},
      {"what the household includes is a candidate",
       edited(kStudy, R"([[workload]]
id = "film")",
              R"([household]
includes = "three"
[[workload]]
id = "film")"),
       R"(study.toml:6:12: error: household.includes = "three": no candidate has this id; expected "one" or "two")"},
      {"a household is one table",
       edited(kStudy, R"([[workload]]
id = "film")",
              R"([[household]]
kwh_per_year = 1
[[workload]]
id = "film")"),
       "study.toml:5:1: error: [[household]] has double brackets: expected [household] with single "
       "ones, once"},
      {"a household is a table", edited(kStudy, "months = 12", "household = 3000"),
       "study.toml:3:13: error: household = 3000: expected a table [household]"},
      {"carbon has an intensity",
       edited(kStudy, R"([[workload]]
id = "film")",
              R"([carbon]
[[workload]]
id = "film")"),
       "study.toml:5:1: error: carbon.kg_per_kwh is missing: expected a number or a range [low, "
       "high], in kg per kWh"},
      {"an intensity is a number",
       edited(kStudy, R"([[workload]]
id = "film")",
              R"([carbon]
kg_per_kwh = "400 g"
[[workload]]
id = "film")"),
       R"(study.toml:6:14: error: carbon.kg_per_kwh = "400 g": expected a number or a range [low, high], in kg per kWh; write 0.4 (kg per kWh are meant))"},
      {"years are 1 to 30",
       edited(kStudy, R"([[workload]]
id = "film")",
              R"([finance]
years = 31
[[workload]]
id = "film")"),
       "study.toml:6:9: error: finance.years = 31: expected a whole number from 1 to 30"},
      {"years are whole",
       edited(kStudy, R"([[workload]]
id = "film")",
              R"([finance]
years = [5, 6]
[[workload]]
id = "film")"),
       "study.toml:6:9: error: finance.years = [5, 6]: expected a whole number from 1 to 30"},
      {"years need a study of a year",
       edited(edited(kStudy, R"([[workload]]
id = "film")",
                     R"([finance]
years = 5
[[workload]]
id = "film")"),
              "months = 12", "months = 6"),
       "study.toml:6:9: error: finance.years = 5: lifetime figures need months = 12, and the study "
       "has months = 6; expected months = 12, or no years"},
      {"rates are above -1",
       edited(kStudy, R"([[workload]]
id = "film")",
              R"([finance]
discount_rate = -1
price_rise = [-2, 0]
[[workload]]
id = "film")"),
       "study.toml:6:17: error: finance.discount_rate = -1: expected a number or a range [low, "
       "high], above -1, as a fraction (0.05 is 5 %)\nstudy.toml:7:15: error: finance.price_rise = "
       "-2: expected a number or a range [low, high], above -1, as a fraction (0.05 is 5 %)"},
      {"a meter has an id and a scale",
       edited(kStudy, R"([[workload]]
id = "film")",
              R"([[meter]]
[[workload]]
id = "film")"),
       "study.toml:5:1: error: meter.id is missing: expected an id in quotes: lower-case letters, "
       "digits, - and _\nstudy.toml:5:1: error: meter.scale is missing: expected a number or a "
       "range [low, high], above 0"},
      {"a scale is above 0",
       edited(kStudy, R"([[workload]]
id = "film")",
              R"([[meter]]
id = "plug"
scale = 0
[[workload]]
id = "film")"),
       "study.toml:7:9: error: meter.scale = 0: expected a number or a range [low, high], above 0"},
      {"meters have ids of their own",
       edited(kStudy, R"([[workload]]
id = "film")",
              R"([[meter]]
id = "plug"
scale = 1
[[meter]]
id = "plug"
scale = 1
[[workload]]
id = "film")"),
       R"(study.toml:9:6: error: meter.id = "plug": the meter at study.toml:6:6 has that id; expected one of its own)"},
  };
  check_cases(cases, read_study);
}
