// `week` of a profile: 168 numbers in place of all that a device draws idle and in use.

#include "../support/week_text.hpp"
#include "support.hpp"

using namespace wattweek;
using namespace wattweek::read_tests;
using tests::rising_week;
using tests::steady_week;
using units::watts;

namespace {

/// A candidate of the plain study whose box has a week, with these keys of its device.
std::string study_with_week(const std::string& keys) {
  return edited(kStudy, "profile = \"box.toml\"\n", keys + "watts = { " + steady_week(9) + " }\n");
}

/// The same beside a box that runs what is left.
std::string week_beside_box(const std::string& keys) {
  return study_with_week(keys) + "[[candidate.device]]\nprofile = \"box.toml\"\n";
}

std::string profile_with(const std::string& week) { return "[watts]\n" + week + "\n"; }

}  // namespace

TEST_CASE("a week is 168 numbers and stands alone") {
  const std::string beside =
      ": week replaces idle, busy, max, curve and at_load; expected either week or them\n";
  const std::string unused =
      ": a device with a week runs no workloads; expected either this or watts.week";
  const std::string beside_week =
      "box.toml:2:1: error: watts.idle" + beside + "box.toml:3:1: error: watts.busy" + beside +
      "box.toml:4:1: error: watts.max" + beside + "box.toml:5:1: error: watts.curve" + beside +
      "box.toml:6:1: error: watts.at_load" + beside;
  const std::string unused_tables = "box.toml:1:1: error: capacity" + unused +
                                    "\nbox.toml:4:2: error: groups" + unused +
                                    "\nbox.toml:6:2: error: increments" + unused;
  const std::vector<Case> cases{
      {"too few", profile_with("week = [9, 9.5]"),
       "box.toml:2:8: error: watts.week = [9, 9.5]: expected 168 numbers, Monday 00:00 first, not "
       "below 0, in W; there are 2"},
      {"one too many", profile_with(edited(steady_week(9), "= [", "= [9, ")),
       "box.toml:2:8: error: watts.week = [9, 9, 9, 9, 9, 9, 9, 9, 9, 9, 9, 9, 9, 9, 9, 9, 9, 9, "
       "9, 9,...: expected 168 numbers, Monday 00:00 first, not below 0, in W; there are 169"},
      {"no array", profile_with("week = 9"),
       "box.toml:2:8: error: watts.week = 9: expected 168 numbers, Monday 00:00 first, not below "
       "0, in W"},
      {"not below 0", profile_with(edited(rising_week(), "[1, 2,", "[1, -2,")),
       "box.toml:2:12: error: watts.week = -2: expected a single number, not below 0, in W"},
      {"no range", profile_with(edited(rising_week(), "[1, 2,", "[[1, 3], 2,")),
       "box.toml:2:9: error: watts.week = [1, 3]: expected a single number, not below 0, in W"},
      {"finite", profile_with(edited(rising_week(), " 168]", " nan]")),
       "box.toml:2:736: error: watts.week = nan: expected a single number, not below 0, in W"},
      {"each mistake of its own", profile_with(edited(rising_week(), "[1, 2,", "[\"1 W\", true,")),
       "box.toml:2:9: error: watts.week = \"1 W\": expected a single number, not below 0, in W; "
       "write 1 (watts are meant)\n"
       "box.toml:2:16: error: watts.week = true: expected a single number, not below 0, in W"},
      {"nothing beside it that it replaces",
       "[watts]\nidle = 9\nbusy = 20\nmax = 30\ncurve = \"linear\"\nat_load = [9, 20]\n" +
           steady_week(9) + "\n",
       std::string_view(beside_week).substr(0, beside_week.size() - 1)},
      {"nothing beside it that use would need",
       "capacity = 4\n[watts]\n" + steady_week(9) +
           "\n[groups]\ndisks = 5\n[increments]\nfilm = 3\n",
       unused_tables},
      {"a key that is nearly a week", profile_with("weak = [9]\nidle = 9"),
       "box.toml:2:1: error: unknown key watts.weak: did you mean week?"},
  };
  check_cases(cases, read_profile);
}

TEST_CASE("a device with a week runs and assists nothing") {
  const std::string nothing =
      ": the device's profile has a week, so it runs and assists nothing; expected another device, "
      "or a profile with idle and increments";
  const std::string two_runs =
      "study.toml:26:9: error: candidate.device.runs = \"film\"" + nothing +
      "\nstudy.toml:26:17: error: candidate.device.runs = \"cams\"" + nothing;
  const std::string assist =
      "study.toml:26:12: error: candidate.device.assists = \"film\"" + nothing;
  const std::vector<Case> cases{
      {"nothing is left for it to take", study_with_week(""),
       R"(study.toml:23:1: error: candidate "two": no device runs workload "cams"; expected it in the runs of a device or in the candidate's skips
study.toml:23:1: error: candidate "two": no device runs workload "film"; expected it in the runs of a device or in the candidate's skips)"},
      {"it may say that it runs nothing", week_beside_box("runs = []\nassists = []\n"), ""},
      {"it runs nothing", week_beside_box("runs = [\"film\", \"cams\"]\n"), two_runs},
      {"it assists nothing", week_beside_box("assists = [\"film\"]\n"), assist},
      {"not what nobody runs either", study_with_week("runs = []\nassists = [\"film\"]\n"),
       R"(study.toml:23:1: error: candidate "two": no device runs workload "cams"; expected it in the runs of a device or in the candidate's skips
study.toml:23:1: error: candidate "two": no device runs workload "film"; expected it in the runs of a device or in the candidate's skips
study.toml:27:12: error: candidate.device.assists = "film": the device's profile has a week, so it runs and assists nothing; expected another device, or a profile with idle and increments)"},
      {"it sleeps only with sleep watts",
       week_beside_box("rest = [{ state = \"sleep\", hours = \"01:00-05:00\" }]\n"),
       R"(study.toml:26:19: error: candidate.device.rest.state = "sleep": the device's profile has no sleep watts; expected sleep = WATTS under [candidate.device.watts])"},
  };
  check_cases(cases, read_study);
}

TEST_CASE("a week keeps its hours, and off and sleep beside it") {
  const model::Profile profile =
      value_of(read_profile(profile_with("off = [0.4, 0.6]\nsleep = 2\n" + rising_week())));
  REQUIRE(profile.week.has_value());
  for (std::size_t hour = 0; hour < model::kHoursOfWeek; ++hour) {
    CHECK((*profile.week)[hour] == watts(static_cast<double>(hour + 1)));
  }
  CHECK(profile.off == model::PowerRange(watts(0.4), watts(0.6)));
  CHECK(profile.sleep == model::PowerRange(watts(2)));
  CHECK(profile.idle == model::PowerRange(watts(0)));
}

TEST_CASE("the first device without runs and without a week runs what is left") {
  const model::Study study = value_of(read_study(week_beside_box(""))).study;
  const std::vector<model::Device>& devices = study.candidates[1].devices;
  CHECK(devices[0].runs.empty());
  CHECK(devices[1].runs.size() == 2);
}
