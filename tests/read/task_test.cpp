#include "support.hpp"

using namespace wattweek::read_tests;

TEST_CASE("which device runs what: each workload by one device or skipped") {
  const std::vector<Case> cases{
      {"a run is an id of a workload", edited(kStudy, R"(name = "big")", R"(name = "big"
runs = ["flim", "cams"])"),
       R"(study.toml:18:9: error: candidate.device.runs = "flim": no workload has this id, did you mean "film"?)"},
      {"runs are an array", edited(kStudy, R"(name = "big")", R"(name = "big"
runs = "film")"),
       R"(study.toml:18:8: error: candidate.device.runs = "film": expected an array of ids, such as ["film"]; write ["film"])"},
      {"runs name each once", edited(kStudy, R"(name = "big")", R"(name = "big"
runs = ["film", "film", "cams"])"),
       R"(study.toml:18:17: error: candidate.device.runs = "film": this id is in the list already; expected each once)"},
      {"what nobody runs is left over", edited(kStudy, R"(name = "big")", R"(name = "big"
runs = ["film"])"),
       R"(study.toml:14:1: error: candidate "one": no device runs workload "cams"; expected it in the runs of a device or in the candidate's skips)"},
      {"what a misspelt id leaves over is not told twice",
       edited(kStudy, R"(name = "big")", R"(name = "big"
runs = ["film", "cam"])"),
       R"(study.toml:18:17: error: candidate.device.runs = "cam": no workload has this id, did you mean "cams"?)"},
      {"a workload is run once", edited(kStudy, R"(profile = "box.toml")", R"(profile = "box.toml"
runs = ["film", "cams"]
[[candidate.device]]
name = "other"
profile = "box.toml"
runs = ["film"])"),
       R"(study.toml:31:9: error: candidate.device.runs = "film": device "box" at study.toml:25:1 runs this workload; expected one device to run it, others may assist)"},
      {"a workload is run or skipped",
       edited(edited(kStudy, R"(id = "two")", R"(id = "two"
skips = ["film"])"),
              R"(profile = "box.toml")", R"(profile = "box.toml"
runs = ["film", "cams"])"),
       R"(study.toml:28:9: error: candidate.device.runs = "film": the candidate skips this workload; expected it run or skipped, not both)"},
      {"a skip is an id of a workload", edited(kStudy, R"(id = "two")", R"(id = "two"
skips = ["books"])"),
       R"(study.toml:25:10: error: candidate.skips = "books": no workload has this id; expected "film" or "cams")"},
      {"an assist needs another device to run the workload",
       edited(kStudy, R"(profile = "box.toml")", R"(profile = "box.toml"
runs = ["cams"]
[[candidate.device]]
profile = "box.toml"
runs = []
assists = ["film"])"),
       R"(study.toml:23:1: error: candidate "two": no device runs workload "film"; expected it in the runs of a device or in the candidate's skips
study.toml:31:12: error: candidate.device.assists = "film": no other device of the candidate runs this workload)"},
      {"an assist to a skipped workload is none",
       edited(edited(kStudy, R"(id = "two")", R"(id = "two"
skips = ["film"])"),
              R"(profile = "box.toml")", R"(profile = "box.toml"
assists = ["film"])"),
       R"(study.toml:28:12: error: candidate.device.assists = "film": the candidate skips this workload; expected another device to run it)"},
      {"a device does not assist itself",
       edited(kStudy, R"(profile = "box.toml")", R"(profile = "box.toml"
assists = ["film"])"),
       R"(study.toml:27:12: error: candidate.device.assists = "film": this device runs the workload itself; expected another device to)"},
      {"an increment is needed", edited(kStudy, "film = 3\n", ""),
       R"(study.toml:16:1: error: device "big" of candidate "one" has no increment for workload "film": expected film = WATTS under [increments] of its profile, or, for a load, compute in the workload, capacity in the profile and busy or at_load in the profile)"},
      {"an increment is needed where runs name the workload",
       edited(kStudy, R"(profile = "box.toml")", R"(profile = "plain.toml"
runs = ["film", "cams"])"),
       R"(study.toml:27:9: error: device "plain" of candidate "two" has no increment for workload "film": expected film = WATTS under [increments] of its profile, or, for a load, compute in the workload, capacity in the profile and busy or at_load in the profile
study.toml:27:17: error: device "plain" of candidate "two" has no increment for workload "cams": expected cams = WATTS under [increments] of its profile, or, for a load, compute in the workload, capacity in the profile and busy or at_load in the profile)"},
      {"an increment is needed by the one that assists",
       edited(kStudy, R"(profile = "box.toml")", R"(profile = "box.toml"
[[candidate.device]]
profile = "plain.toml"
assists = ["film"])"),
       R"(study.toml:29:12: error: device "plain" of candidate "two" has no increment for workload "film": expected film = WATTS under [increments] of its profile, or, for a load, compute in the workload, capacity in the profile and busy or at_load in the profile)"},
      {"a load needs a way to full load",
       edited(edited(edited(kStudy, R"(id = "film")", R"(id = "film"
compute = 1)"),
                     "film = 3\n", ""),
              R"(name = "big")", R"(name = "big"
capacity = 8)"),
       R"(study.toml:17:1: error: device "big" of candidate "one" has no increment for workload "film": expected film = WATTS under [increments] of its profile, or, for a load, busy or at_load in the profile)"},
      {"a misspelt increment is recognised", edited(kStudy, "film = 3\n", "films = 3\n"),
       R"(study.toml:16:1: error: device "big" of candidate "one" has no increment for workload "film": expected film = WATTS under [increments] of its profile, or, for a load, compute in the workload, capacity in the profile and busy or at_load in the profile; is its increment "films" meant?)"},
  };
  check_cases(cases, read_study);
}
