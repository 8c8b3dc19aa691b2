#include "wattweek/decide/load_duration.hpp"

#include <doctest/doctest.h>

#include <string>
#include <vector>

#include "../support/about.hpp"
#include "../support/study_text.hpp"

namespace wattweek::decide {
namespace {

using tests::about;
using tests::kFlatTariff;
using tests::kYear2027;

LoadDuration loads_of(const std::string& text) {
  const read::StudyInput input = tests::read_study(text);
  return load_durations(input.study, input.zone).at(0);
}

std::string workload(const std::string& id, const std::string& use) {
  return "[[workload]]\nid = \"" + id + "\"\n[[workload.use]]\n" + use;
}

std::string study(const std::string& workloads, const std::string& candidate) {
  return kYear2027 + kFlatTariff + workloads + "[[candidate]]\nid = \"box\"\n" + candidate;
}

// Two hours on each of 365 days.
const std::string kFilm = workload("film", "hours = \"20:00-22:00\"\nshare = 0.5\n");
const std::string kBackup = workload("backup", "hours = \"21:00-23:00\"\nshare = 0.2\n");

void check_loads(const LoadDuration& loads, const std::vector<LoadHours>& expected) {
  REQUIRE(loads.size() == expected.size());
  for (std::size_t i = 0; i < loads.size(); ++i) {
    CAPTURE(i);
    CHECK(loads[i].watts == about(expected[i].watts));
    CHECK(loads[i].hours == about(expected[i].hours));
  }
}

// By hand, as all cases below: from 20:00 to 21:00 the film alone, to 22:00 both, to 23:00 the
// backup alone.
TEST_CASE("load duration: two workloads that overlap for an hour draw four different watts") {
  check_loads(loads_of(study(kFilm + kBackup,
                             "[[candidate.device]]\nwatts = { idle = 10 }\n"
                             "increments = { film = 5, backup = 8 }\n")),
              {{23, 365 * 0.1},
               {18, 365 * (0.5 * 0.2 + 0.2)},
               {15, 365 * (0.5 + 0.5 * 0.8)},
               {10, 365 * (21 + 0.5 + 0.5 * 0.8 + 0.8)}});
}

TEST_CASE("load duration: equal sums of different workloads are the same watts") {
  check_loads(loads_of(study(kFilm + kBackup,
                             "[[candidate.device]]\nwatts = { idle = 10 }\n"
                             "increments = { film = 0.3, backup = 0.3 }\n")),
              {{10.6, 365 * 0.1},
               {10.3, 365 * (0.5 + 0.2 + 0.5 * 0.8 + 0.5 * 0.2)},
               {10, 365 * (21 + 0.5 + 0.5 * 0.8 + 0.8)}});
}

TEST_CASE("load duration: all that asks for more than the cap draws the cap") {
  check_loads(loads_of(study(kFilm + kBackup,
                             "[[candidate.device]]\nwatts = { idle = 10, max = 15 }\n"
                             "increments = { film = 5, backup = 8 }\n")),
              {{15, 365 * (0.5 + 0.5 * 0.8 + 0.2 + 0.2)}, {10, 365 * (21 + 0.5 + 0.4 + 0.8)}});
}

TEST_CASE("load duration: a group of two is drawn once") {
  check_loads(
      loads_of(study(kFilm + kBackup,
                     "[[candidate.device]]\nwatts = { idle = 10 }\ngroups = { disks = 7 }\n"
                     "increments = { film = { each = 1, group = \"disks\" }, backup = { each "
                     "= 2, group = \"disks\" } }\n")),
      {{20, 365 * 0.1},
       {19, 365 * (0.5 * 0.2 + 0.2)},
       {18, 365 * (0.5 + 0.5 * 0.8)},
       {10, 365 * (21 + 0.5 + 0.4 + 0.8)}});
}

TEST_CASE("load duration: hours asleep are at the watts of sleep, and nothing is in use") {
  check_loads(loads_of(study(kFilm,
                             "[[candidate.device]]\nwatts = { idle = 10, sleep = 2 }\n"
                             "increments = { film = 5 }\n[[candidate.device.rest]]\n"
                             "hours = \"21:00-06:00\"\nstate = \"sleep\"\n")),
              {{15, 365 * 0.5}, {10, 365 * 14.5}, {2, 365 * 9}});
}

// The same film at the same time on both: 10 + 2 x 4 W idle, and 5 + 2 x min(3, 1 + 3) W more.
// Reckoned apart, there would be four different watts.
TEST_CASE("load duration: a workload has the same units in use on all devices that take part") {
  check_loads(
      loads_of(study(kFilm,
                     "[[candidate.device]]\nwatts = { idle = 10 }\nincrements = { film = 5 }\n"
                     "[[candidate.device]]\nruns = []\nassists = [\"film\"]\ncount = 2\n"
                     "watts = { idle = 4, max = 7 }\ngroups = { disks = 3 }\n"
                     "increments = { film = { each = 1, group = \"disks\" } }\n")),
      {{29, 365.0}, {18, 365 * 23.0}});
}

TEST_CASE("load duration: two capped devices that share a workload are reckoned together") {
  check_loads(
      loads_of(study(kFilm + kBackup,
                     "[[candidate.device]]\nwatts = { idle = 10, max = 16 }\n"
                     "increments = { film = 5, backup = 8 }\n"
                     "[[candidate.device]]\nruns = []\nassists = [\"film\", \"backup\"]\n"
                     "watts = { idle = 4, max = 9 }\nincrements = { film = 1, backup = 5 }\n")),
      {{25, 365 * (0.1 + 0.1 + 0.2)}, {20, 365 * (0.5 + 0.4)}, {14, 365 * (21 + 0.5 + 0.4 + 0.8)}});
}

// Powers of two: 2^14 sums and 2^23, no two of them equal.
TEST_CASE("load duration: more joint outcomes than can be told apart have no curve") {
  const auto of = [](int services) {
    std::string workloads;
    std::string increments;
    double watts = 1;
    for (int i = 0; i < services; ++i) {
      const std::string id = "s" + std::to_string(i);
      workloads += workload(id, "share = 0.5\n");
      increments += (i > 0 ? ", " : "") + id + " = " + std::to_string(watts);
      watts *= 2;
    }
    return loads_of(study(
        workloads,
        "[[candidate.device]]\nwatts = { idle = 10 }\nincrements = { " + increments + " }\n"));
  };
  CHECK(of(14).size() == 1U << 14U);
  CHECK(of(23).empty());
}

}  // namespace
}  // namespace wattweek::decide
