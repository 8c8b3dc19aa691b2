#include "support.hpp"

using namespace wattweek::read_tests;

TEST_CASE("workloads, uses and absences: each key and what it refuses") {
  const std::vector<Case> cases{
      {"a workload has an id",
       edited(kStudy, R"(id = "film"
)",
              ""),
       "study.toml:5:1: error: workload.id is missing: expected an id in quotes: lower-case "
       "letters, digits, - and _"},
      {"an id has small letters", edited(kStudy, R"(id = "film")", R"(id = "Film")"),
       R"(study.toml:6:6: error: workload.id = "Film": expected an id in quotes: lower-case letters, digits, - and _)"},
      {"an id is a text", edited(kStudy, R"(id = "film")", "id = 1"),
       "study.toml:6:6: error: workload.id = 1: expected an id in quotes: lower-case letters, "
       "digits, - and _"},
      {"ids of workloads are unique", edited(kStudy, R"(id = "cams")", R"(id = "film")"),
       R"(study.toml:11:6: error: workload.id = "film": the workload at study.toml:6:6 has that id; expected one of its own)"},
      {"a name, a unit and a compute", edited(kStudy, R"(id = "film")", R"(id = "film"
name = 1
unit = ""
compute = -1)"),
       R"(study.toml:7:8: error: workload.name = 1: expected the workload's name in quotes
study.toml:8:8: error: workload.unit = "": the text is empty; expected what is counted, in quotes, such as "stream"
study.toml:9:11: error: workload.compute = -1: expected a number or a range [low, high], not below 0)"},
      {"a workload has a use",
       edited(kStudy, R"([[workload.use]]
hours = "20:00-22:00"
share = 0.5
)",
              ""),
       "study.toml:5:1: error: workload.use is missing: expected at least one [[workload.use]]"},
      {"uses are not empty",
       edited(kStudy, R"([[workload.use]]
hours = "20:00-22:00"
share = 0.5
)",
              "use = []\n"),
       "study.toml:7:7: error: workload.use = []: expected at least one [[workload.use]]"},
      {"one use in single brackets",
       edited(kStudy, R"([[workload.use]]
hours = "20:00-22:00")",
              R"([workload.use]
hours = "20:00-22:00")"),
       "study.toml:7:1: error: [workload.use] is one table: expected [[workload.use]] with double "
       "brackets, once for each, or an array [ {...} ]"},
      {"units are not below 0", edited(kStudy, "units = 2", "units = -2"),
       "study.toml:13:9: error: workload.use.units = -2: expected a single number, not below 0"},
      {"units are no range", edited(kStudy, "units = 2", "units = [1, 2]"),
       "study.toml:13:9: error: workload.use.units = [1, 2]: expected a single number, not below "
       "0"},
      {"independent units are whole", edited(kStudy, "units = 2", R"(units = 2.5
pattern = "independent")"),
       R"(study.toml:13:9: error: workload.use.units = 2.5: expected a whole number up to 1000000 where the pattern is "independent")"},
      {"a pattern is one of two words", edited(kStudy, "units = 2", R"(pattern = "independant")"),
       R"(study.toml:13:11: error: workload.use.pattern = "independant": expected "together" or "independent"; did you mean "independent"?)"},
      {"a share is at most 1", edited(kStudy, "share = 0.5", "share = 50"),
       "study.toml:9:9: error: workload.use.share = 50: expected a number or a range [low, high] "
       "from 0 to 1, as a fraction (0.05 is 5 %); write 0.5 for 50 %"},
      {"a share beyond a hundred gets no advice", edited(kStudy, "share = 0.5", "share = 500"),
       "study.toml:9:9: error: workload.use.share = 500: expected a number or a range [low, high] "
       "from 0 to 1, as a fraction (0.05 is 5 %)"},
      {"both ends of a share lie within 0 and 1",
       edited(kStudy, "share = 0.5", "share = [-0.1, 1.1]"),
       "study.toml:9:10: error: workload.use.share = -0.1: expected a number or a range [low, "
       "high] from 0 to 1, as a fraction (0.05 is 5 %)\nstudy.toml:9:16: error: workload.use.share "
       "= 1.1: expected a number or a range [low, high] from 0 to 1, as a fraction (0.05 is 5 %)"},
      {"minutes or share", edited(kStudy, "share = 0.5", "share = 0.5\nminutes = 30"),
       "study.toml:10:1: error: workload.use.minutes: there is a share as well; expected one of "
       "the two"},
      {"minutes are above 0", edited(kStudy, "share = 0.5", "minutes = 0"),
       "study.toml:9:11: error: workload.use.minutes = 0: expected a number or a range [low, "
       "high], above 0, in minutes"},
      {"minutes fit into their hours", edited(kStudy, "share = 0.5", "minutes = 121"),
       "study.toml:9:11: error: workload.use.minutes = 121: more than the 120 minutes of its "
       "hours; expected at most 120"},
      {"minutes fit at their high end too", edited(kStudy, "share = 0.5", "minutes = [30, 121]"),
       "study.toml:9:11: error: workload.use.minutes = [30, 121]: more than the 120 minutes of its "
       "hours; expected at most 120"},
      {"minutes without hours fit into the clock face",
       edited(kStudy, "units = 2", "minutes = 1441"),
       "study.toml:13:11: error: workload.use.minutes = 1441: more than the 1440 minutes of its "
       "hours; expected at most 1440"},
      {"minutes over midnight fit into their span",
       edited(edited(kStudy, "share = 0.5", "minutes = 241"), "20:00-22:00", "22:00-02:00"),
       "study.toml:9:11: error: workload.use.minutes = 241: more than the 240 minutes of its "
       "hours; expected at most 240"},
      {"minutes have one span",
       edited(edited(kStudy, "share = 0.5", "minutes = 30"), "20:00-22:00",
              "20:00-22:00,23:00-24:00"),
       "study.toml:9:11: error: workload.use.minutes = 30: minutes need hours with a single span; "
       "expected one span or share"},
      {"an absence has dates",
       edited(kStudy, R"([[workload]]
id = "film")",
              R"([[away]]
[[workload]]
id = "film")"),
       R"(study.toml:5:1: error: away.dates is missing: expected first and last date, such as "2027-06-01..2027-06-14")"},
      {"an absence names workloads",
       edited(kStudy, R"([[workload]]
id = "film")",
              R"([[away]]
dates = "2027-06-01..2027-06-14"
workloads = ["flim", 3]
[[workload]]
id = "film")"),
       R"(study.toml:7:14: error: away.workloads = "flim": no workload has this id, did you mean "film"?
study.toml:7:22: error: away.workloads = 3: expected the id of a workload in quotes)"},
      {"an absence names at least one",
       edited(kStudy, R"([[workload]]
id = "film")",
              R"([[away]]
dates = "2027-06-01..2027-06-14"
workloads = []
[[workload]]
id = "film")"),
       "study.toml:7:13: error: away.workloads = []: expected at least one id; without the key all "
       "workloads are meant"},
      {"an absence names each once, in an array",
       edited(kStudy, R"([[workload]]
id = "film")",
              R"([[away]]
dates = "2027-06-01..2027-06-14"
workloads = ["film", "film"]
[[away]]
dates = "2027-06-01..2027-06-14"
workloads = "film"
[[workload]]
id = "film")"),
       R"(study.toml:7:22: error: away.workloads = "film": this id is in the list already; expected each once
study.toml:10:13: error: away.workloads = "film": expected an array of ids, such as ["film"]; write ["film"])"},
  };
  check_cases(cases, read_study);
}
