#include "support.hpp"

using namespace wattweek;
using namespace wattweek::read_tests;
using namespace std::chrono_literals;
using units::kilowatt_hours;
using units::money;

namespace {

const std::string kFull = R"(title = "Ostrawick"
time_zone = "Etc/UTC"
start = 2027-03-01
months = 12
holidays = [2027-12-25]
holidays_as = "sun"
baseline = "two"
[tariff]
currency = "EUR"
[[tariff.band]]
name = "all"
price = 0.3
[household]
kwh_per_year = [3000, 3500]
includes = "one"
[carbon]
kg_per_kwh = 0.4
[finance]
years = 5
discount_rate = [0.01, 0.03]
price_rise = -0.02
[[meter]]
id = "plug"
scale = [0.98, 1.02]
[[workload]]
id = "film"
name = "films in the evening"
unit = "stream"
compute = 1.5
[[workload.use]]
days = "sat,sun"
hours = "22:00-02:00"
units = 2.5
minutes = [60, 120]
[[workload.use]]
units = 4
share = [0.1, 0.2]
pattern = "independent"
[[away]]
dates = "2027-06-01..2027-06-14"
[[candidate]]
id = "one"
name = "the old one"
purchase = [100, 120]
resale = -5
later = [ { year = 3, cost = 40, name = "disk" } ]
[[candidate.device]]
count = 2
rest = [ { hours = "01:00-05:00", state = "sleep" }, { state = "off" } ]
[candidate.device.watts]
idle = 10
sleep = 1
[candidate.device.increments]
film = 3
[[candidate]]
id = "two"
skips = ["film"]
[[candidate.device]]
profile = "plain.toml"
)";

model::Study study_of(const std::string& text) { return value_of(read_study(text)).study; }

}  // namespace

TEST_CASE("a study holds what its file says at the top") {
  const model::Study study = study_of(kFull);
  CHECK(study.title == "Ostrawick");
  CHECK(study.time_zone == "Etc/UTC");
  CHECK(study.start == 2027y / 3);
  CHECK(study.months == 12);
  CHECK(diag::to_text(study.months_place) == "study.toml:4:10");
  CHECK(study.holidays.dates == std::vector<model::CivilDay>{model::CivilDay(2027y / 12 / 25)});
  CHECK(study.holidays.count_as == std::chrono::Sunday);
  CHECK(study.baseline == 1);
  CHECK(std::get<0>(study.household.use) ==
        units::Range<units::Energy>(kilowatt_hours(3000), kilowatt_hours(3500)));
  CHECK(study.household.includes == std::size_t{0});
  CHECK(diag::to_text(study.household.includes_place) == "study.toml:15:12");
  CHECK(study.carbon_kg_per_kwh == units::Range<double>(0.4));
  REQUIRE(study.finance.has_value());
  CHECK(study.finance->years == 5);
  CHECK(study.finance->discount_rate == units::Range<double>(0.01, 0.03));
  CHECK(study.finance->price_rise == units::Range<double>(-0.02));
  REQUIRE(study.meters.size() == 1);
  CHECK(study.meters[0].id == "plug");
  CHECK(study.meters[0].scale == units::Range<double>(0.98, 1.02));
}

TEST_CASE("a workload and its uses: minutes are a share of the span by the clock face") {
  const model::Study study = study_of(kFull);
  REQUIRE(study.workloads.size() == 1);
  const model::Workload& film = study.workloads[0];
  CHECK(film.name == "films in the evening");
  CHECK(film.unit == "stream");
  CHECK(film.compute == units::Range<double>(1.5));
  REQUIRE(film.uses.size() == 2);
  CHECK(film.uses[0].units == 2.5);
  CHECK(film.uses[0].share == units::Range<double>(0.25, 0.5));
  CHECK(film.uses[0].pattern == model::Pattern::together);
  CHECK(film.uses[1].units == 4);
  CHECK(film.uses[1].share == units::Range<double>(0.1, 0.2));
  CHECK(film.uses[1].pattern == model::Pattern::independent);
}

TEST_CASE("minutes without hours are a share of 1440, all of them allowed") {
  const model::Study study = study_of(edited(kStudy, "units = 2", "minutes = 1440"));
  CHECK(study.workloads[1].uses[0].share == units::Range<double>(1.0));
}

TEST_CASE("an absence without names is from all workloads") {
  CHECK(study_of(kFull).away.at(0).workloads == std::vector<std::size_t>{0});
  const std::string away = "[[away]]\ndates = \"2027-06-01..2027-06-14\"\nworkloads = [\"cams\"]\n";
  const model::Study study = study_of(kStudy + away);
  CHECK(study.away.at(0).workloads == std::vector<std::size_t>{1});
  CHECK(diag::to_text(study.away.at(0).place) == "study.toml:27:1");
}

TEST_CASE("a candidate, its later costs, and its devices with their rests") {
  const model::Study study = study_of(kFull);
  REQUIRE(study.candidates.size() == 2);
  const model::Candidate& one = study.candidates[0];
  CHECK(one.name == "the old one");
  CHECK(one.purchase == model::MoneyRange(money(100), money(120)));
  CHECK(one.resale == model::MoneyRange(money(-5)));
  REQUIRE(one.later.size() == 1);
  CHECK(one.later[0].year == 3);
  CHECK(one.later[0].cost == model::MoneyRange(money(40)));
  CHECK(one.later[0].name == "disk");
  REQUIRE(one.devices.size() == 1);
  CHECK(one.devices[0].count == 2);
  REQUIRE(one.devices[0].rests.size() == 2);
  CHECK(one.devices[0].rests[0].state == model::RestState::sleep);
  CHECK(one.devices[0].rests[1].state == model::RestState::off);
  CHECK(study.candidates[1].name == "two");
  CHECK(study.candidates[1].skips == std::vector<std::size_t>{0});
}

TEST_CASE("what a study leaves out has the contract's default") {
  const model::Study study = study_of(edited(kStudy, "months = 12\n", ""));
  CHECK(study.title == "study");
  CHECK(study.months == 12);
  CHECK(diag::to_text(study.months_place) == "study.toml:2:9");
  CHECK(study.baseline == 0);
  CHECK(std::get<0>(study.household.use) == units::Range<units::Energy>(kilowatt_hours(0)));
  CHECK_FALSE(study.finance.has_value());
  CHECK_FALSE(study.carbon_kg_per_kwh.has_value());
  CHECK(study.workloads[1].name == "cams");
  CHECK(study.workloads[1].unit == "unit");
  CHECK(study.workloads[0].uses[0].units == 1);
  CHECK(study.workloads[1].uses[0].share == units::Range<double>(1.0));
}

TEST_CASE("a household may be given month by month") {
  const std::string twelve =
      "[household]\nkwh_per_month = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12]\n";
  const model::Study study = study_of(kStudy + twelve);
  CHECK(std::get<1>(study.household.use)[11] == kilowatt_hours(12));
}

TEST_CASE("a study needs no workloads") {
  const std::string text = R"(time_zone = "Etc/UTC"
start = 2027-01-01
tariff = "day.toml"
workload = []
[[candidate]]
id = "box"
[[candidate.device]]
profile = "plain.toml"
)";
  CHECK(study_of(text).workloads.empty());
}

TEST_CASE("a tariff in the study is named like the study, one in a file like the file") {
  CHECK(study_of(kFull).tariff.name == "Ostrawick");
  CHECK(study_of(kStudy).tariff.name == "day");
}

TEST_CASE("a tariff's own holidays replace the study's, even where it lists none") {
  const std::string tariff = "currency = \"EUR\"\n[[tariff.band]]";
  CHECK(study_of(kFull).tariff.holidays.dates.size() == 1);
  CHECK_FALSE(study_of(kFull).tariff.has_own_holidays);
  CHECK_FALSE(study_of(kFull).tariff.holidays.count_as.has_value());
  const model::Study own = study_of(edited(
      kFull, tariff, "currency = \"EUR\"\nholidays = []\nholidays_as = \"sat\"\n[[tariff.band]]"));
  CHECK(own.tariff.holidays.dates.empty());
  CHECK(own.tariff.has_own_holidays);
  CHECK(own.tariff.holidays.count_as == std::chrono::Saturday);
}

TEST_CASE("a profile may name a meter that the study does not list") {
  CHECK(read_study(edited(kStudy, "name = \"big\"", "name = \"big\"\nmeter = \"other\"")).value);
}

TEST_CASE("a band that is missing only outside the study is no gap") {
  const std::string text =
      edited(kFull, "price = 0.3", "price = 0.3\ndates = \"2027-03-01..2028-02-29\"");
  CHECK(read_study(text).value.has_value());
}
