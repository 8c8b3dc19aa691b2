// A year's energy against calculations that others have printed.

#include <doctest/doctest.h>

#include <string>

#include "../support/about.hpp"
#include "../support/study_text.hpp"

using namespace wattweek;
using namespace wattweek::tests;

namespace {

// One machine, off and asleep in these hours of every day of 2027, idle in the rest.
double year_kwh(const std::string& watts, const std::string& off_hours,
                const std::string& sleep_hours) {
  std::string text =
      kYear2027 + kFlatTariff + "[[candidate]]\nid = \"box\"\n[[candidate.device]]\n";
  text += "watts = " + watts + "\nrest = [";
  if (!off_hours.empty()) text += "{ hours = \"" + off_hours + "\", state = \"off\" },";
  if (!sleep_hours.empty()) text += "{ hours = \"" + sleep_hours + "\", state = \"sleep\" },";
  const Reckoned got = reckon(text + "]\n");
  return units::in_kilowatt_hours(got.result.candidates[0].energy);
}

}  // namespace

TEST_CASE("the sample calculation for a notebook comes out") {
  // Source: ENERGY STAR Computers v5.0, sample calculation in the EU-US agreement: off 1 W for 60
  // %, sleep 1.7 W for 10 %, idle 10 W for 30 % of 8760 h; inputs and formula seen, exact value
  // 33.0252 kWh derived, the printed 33.03 from memory.
  const double kwh =
      year_kwh("{ off = 1.0, sleep = 1.7, idle = 10 }", "00:00-14:24", "14:24-16:48");
  CHECK(kwh == about(33.0252));
  CHECK(kwh == printed(33.03, 2));
}

TEST_CASE("the two examples of a voluntary industry agreement come out") {
  // Source: Voluntary Industry Agreement, Annex C "TEC assessment", examples A and B:
  // 9 h x 24.0 W + 15 h x 15.0 W a day is 161 kWh a year, and
  // 4.5 h x 24.0 W + 15 h x 15.0 W + 4.5 h x 3.0 W is 126.5 kWh.
  CHECK(year_kwh("{ sleep = 15.0, idle = 24.0 }", "", "00:00-15:00") == about(160.965));
  CHECK(year_kwh("{ sleep = 15.0, idle = 24.0 }", "", "00:00-15:00") == printed(161, 0));
  const double b =
      year_kwh("{ off = 3.0, sleep = 15.0, idle = 24.0 }", "00:00-04:30", "04:30-19:30");
  CHECK(b == about(126.4725));
  CHECK(b == printed(126.5, 1));
}

TEST_CASE("the mode weights of EU 617/2013 are hours of the day") {
  // Source: Regulation (EU) 617/2013, Annex II: desktop 55 / 5 / 40 %, notebook 60 / 10 / 30 %
  // (weights from memory); with no sleep mode and idle up to 10 W idle counts 45 % (rule text
  // seen). Results derived.
  CHECK(year_kwh("{ off = 0.9, sleep = 2.1, idle = 28.4 }", "00:00-13:12", "13:12-14:24") ==
        about(104.7696));
  CHECK(year_kwh("{ off = 0.4, idle = 8.5 }", "00:00-13:12", "") == about(35.4342));
  CHECK(year_kwh("{ off = 0.5, sleep = 1.2, idle = 7.0 }", "00:00-14:24", "14:24-16:48") ==
        about(22.0752));
}

TEST_CASE("a weekly routine is priced over the year's real days and not over 52 weeks") {
  // Derived: five days with 8 h at 24 W and 16 h at 6 W, two days with 24 h at 6 W. 2027 has 261
  // working days and not 5/7 of 365.
  const Reckoned got = reckon(kYear2027 + kFlatTariff + R"(
[[workload]]
id = "office"
use = [ { days = "mon-fri", hours = "09:00-17:00" } ]
[[candidate]]
id = "box"
[[candidate.device]]
watts = { idle = 6 }
increments = { office = 18 }
)");
  CHECK(units::in_kilowatt_hours(got.result.candidates[0].energy) ==
        about((261 * (8 * 24 + 16 * 6) + 104 * 24 * 6) / 1000.0));
}

TEST_CASE("13.5 W all of 2027 is 118.26 kWh, with five streams four hours every evening 140.89") {
  // Common practice, no source: 13.5 W with every service up, 29 W with five streams.
  const std::string text = kYear2027 + kFlatTariff + R"(
[[workload]]
id = "films"
use = [ { hours = "19:00-23:00", units = 5, share = SHARE } ]
[[candidate]]
id = "box"
[[candidate.device]]
watts = { idle = 13.5 }
increments = { films = 3.1 }
)";
  const auto with_share = [&](const std::string& share) {
    std::string copy = text;
    copy.replace(copy.find("SHARE"), 5, share);
    return units::in_kilowatt_hours(reckon(copy).result.candidates[0].energy);
  };
  CHECK(with_share("0.0") == about(118.26));
  CHECK(with_share("1.0") == about(140.89));
}

TEST_CASE("a constant load follows the length of the year") {
  // Derived: 22 W over 8760 h and over 8784 h.
  CHECK(year_kwh("{ idle = 22 }", "", "") == about(192.72));
  const Reckoned leap =
      reckon("time_zone = \"Europe/Dublin\"\nstart = 2028-01-01\n" + kFlatTariff +
             "[[candidate]]\nid = \"box\"\n[[candidate.device]]\nwatts.idle = 22\n");
  CHECK(units::in_kilowatt_hours(leap.result.candidates[0].energy) == about(193.248));
  CHECK(leap.result.hours == 8784);
}

TEST_CASE("CO2 follows the grid intensity that the user names") {
  // Source: US EPA eGRID2022 Table 1, 823.1 lb/MWh for the U.S.; 1 lb = 0.45359237 kg exactly, so
  // 0.3733518797 kg/kWh and, for 192.72 kWh, 71.95237426 kg (derived).
  const double kg_per_kwh = 823.1 * 0.45359237 / 1000;
  CHECK(kg_per_kwh == about(0.3733518797));
  const Reckoned got =
      reckon(kYear2027 + "[carbon]\nkg_per_kwh = 0.3733518797\n" + kFlatTariff +
             "[[candidate]]\nid = \"box\"\n[[candidate.device]]\nwatts.idle = 22\n");
  REQUIRE(got.result.candidates[0].co2_kg.has_value());
  CHECK(*got.result.candidates[0].co2_kg == about(71.95237426));
}
