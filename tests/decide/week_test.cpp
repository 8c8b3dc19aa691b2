#include "wattweek/decide/week.hpp"

#include <doctest/doctest.h>

#include <string>
#include <utility>
#include <vector>

#include "../support/about.hpp"
#include "../support/study_text.hpp"
#include "../support/week_text.hpp"

namespace wattweek::decide {
namespace {

using tests::about;
using tests::kFlatTariff;
using tests::kYear2027;

constexpr const char* kBox = R"(
[[candidate]]
id = "box"
[[candidate.device]]
watts = { idle = 10 }
increments = { film = 6.0 }
)";

Week week_of(const std::string& text) {
  const read::StudyInput input = tests::read_study(text);
  return weeks(input.study, input.zone).at(0);
}

std::string films(const std::string& use) {
  return kYear2027 + kFlatTariff + "[[workload]]\nid = \"film\"\n[[workload.use]]\n" + use + kBox;
}

TEST_CASE("week: Saturday's film is seen on Saturday between eight and ten") {
  const Week week = week_of(films("days = \"sat\"\nhours = \"20:00-22:00\"\nshare = 0.5\n"));
  CHECK(week.mean_w(5, 39) == about(10));
  CHECK(week.mean_w(5, 40) == about(13));
  CHECK(week.mean_w(5, 43) == about(13));
  CHECK(week.mean_w(5, 44) == about(10));
  CHECK(week.mean_w(6, 41) == about(10));
}

TEST_CASE("week: a profile with a week gives back its hours, two slots each") {
  const Week week = week_of(kYear2027 + kFlatTariff +
                            "[[candidate]]\nid = \"box\"\n[[candidate.device]]\ncount = 2\n"
                            "watts = { " +
                            tests::rising_week() + " }\n");
  for (int day = 0; day < 7; ++day) {
    for (int slot = 0; slot < 48; ++slot) {
      CHECK(week.mean_w(day, slot) == about(2 * (24 * day + slot / 2 + 1)));
    }
  }
}

TEST_CASE("week: a window over midnight is seen on the next morning") {
  const Week week = week_of(films("days = \"sat\"\nhours = \"23:00-01:00\"\n"));
  CHECK(week.mean_w(5, 47) == about(16));
  CHECK(week.mean_w(6, 0) == about(16));
  CHECK(week.mean_w(6, 2) == about(10));
}

TEST_CASE("week: half of a half-hour is half of the watts") {
  const Week week = week_of(films("hours = \"12:00-12:15\"\n"));
  CHECK(week.mean_w(0, 24) == about(13));
}

TEST_CASE("week: a holiday that counts as Sunday is still the weekday on which it falls") {
  // In 2027 January has Fridays on the 1st, 8th, 15th, 22nd and 29th, the year 53 Fridays.
  const Week week = week_of("holidays = [2027-01-01]\nholidays_as = \"sun\"\n" +
                            films("days = \"sun\"\nhours = \"12:00-13:00\"\n"));
  CHECK(week.mean_w(4, 24) == about(10 + 6.0 / 53));
  CHECK(week.mean_w(6, 24) == about(16));
}

TEST_CASE("week: the hour that spring skips and autumn repeats counts for as long as it lasts") {
  const std::string text = R"(
time_zone = "Europe/Dublin"
start = 2027-01-01
)" + kFlatTariff + R"(
[[workload]]
id = "film"
[[workload.use]]
dates = "2027-10-31..2027-10-31"
hours = "01:00-02:00"
)" + std::string(kBox);
  // 52 Sundays: 01:00 to 02:00 is skipped on 28 March and comes twice on 31 October, so it lasts
  // 52 hours, two of them with the film.
  const Week week = week_of(text);
  CHECK(week.mean_w(6, 2) == about(10 + 6.0 * 2 / 52));
  CHECK(week.mean_w(6, 3) == about(10 + 6.0 * 2 / 52));
}

TEST_CASE("week: its mean over the hours of the year is the year's energy") {
  const std::string text = films("days = \"mon-thu\"\nhours = \"17:10-23:40\"\nshare = 0.3\n");
  const Week week = week_of(text);
  const tests::Reckoned all = tests::reckon(text);
  // 52 weeks and, in 2027, one Friday more.
  const double kwh = (52 * week.mean_w.sum() + week.mean_w.row(4).sum()) * 0.5 / 1000;
  CHECK(kwh == about(units::in_kilowatt_hours(all.result.candidates[0].energy)));
}

TEST_CASE("week: a device asleep at night is seen asleep") {
  const Week week = week_of(kYear2027 + kFlatTariff + R"(
[[candidate]]
id = "box"
[[candidate.device]]
watts = { idle = 10, sleep = 2 }
rest = [ { hours = "01:00-06:00", state = "sleep" } ]
)");
  CHECK(week.mean_w(2, 1) == about(10));
  CHECK(week.mean_w(2, 2) == about(2));
  CHECK(week.mean_w(2, 12) == about(10));
}

TEST_CASE("week: progress names each candidate and how much is behind") {
  const read::StudyInput input = tests::read_study(
      kYear2027 + kFlatTariff + "[[candidate]]\nid = \"rack\"\n[[candidate.device]]\n" +
      "watts = { idle = 100 }\n[[candidate]]\nid = \"palm\"\n[[candidate.device]]\n" +
      "watts = { idle = 10 }\n");
  std::vector<std::pair<std::string, double>> heard;
  weeks(input.study, input.zone,
        [&heard](const std::string& what, double fraction) { heard.emplace_back(what, fraction); });
  CHECK(heard == std::vector<std::pair<std::string, double>>{{"rack", 0.0}, {"palm", 0.5}});
}

}  // namespace
}  // namespace wattweek::decide
