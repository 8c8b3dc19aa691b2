#include <cmath>

#include "support.hpp"

using namespace wattweek;
using namespace wattweek::read_tests;
using units::watts;

namespace {

model::Increment film(const std::string& form) {
  const std::string text = edited(kProfile, "film = 3", "film = " + form);
  return value_of(read_profile(text)).increments.at(0).increment;
}

}  // namespace

TEST_CASE("a profile holds what its file says") {
  const model::Profile profile = value_of(read_profile(R"(name = "palm-size box"
capacity = [4, 5]
meter = "plug-1"
[watts]
off = 0.5
sleep = [1, 1.5]
idle = [13, 14]
busy = 29
max = 40
curve = "concave"
[groups]
tapes = 9
disks = [5, 7]
[increments]
photos = 2
film = 3.1
)"));
  CHECK(profile.name == "palm-size box");
  CHECK(profile.capacity == units::Range<double>(4, 5));
  CHECK(profile.meter == "plug-1");
  CHECK(profile.off == model::PowerRange(watts(0.5)));
  CHECK(profile.sleep == model::PowerRange(watts(1), watts(1.5)));
  CHECK(profile.idle == model::PowerRange(watts(13), watts(14)));
  CHECK(profile.busy == model::PowerRange(watts(29)));
  CHECK(profile.max == model::PowerRange(watts(40)));
  CHECK(profile.curve == model::Curve::concave);
  CHECK(diag::to_text(profile.place) == "box.toml:1:1");
  CHECK(diag::to_text(profile.full_load_place.value()) == "box.toml:8:1");
  CHECK(diag::to_text(profile.meter_place.value()) == "box.toml:3:9");
}

TEST_CASE("groups and increments keep the order of the file") {
  const model::Profile profile = value_of(read_profile(
      "[watts]\nidle = 1\n[groups]\nz = 1\na = 2\nm = 3\n[increments]\nphotos = 1\nfilm = 2\n"));
  REQUIRE(profile.groups.size() == 3);
  CHECK(profile.groups[0].name == "z");
  CHECK(profile.groups[1].name == "a");
  CHECK(profile.groups[2].name == "m");
  REQUIRE(profile.increments.size() == 2);
  CHECK(profile.increments[0].workload_id == "photos");
  CHECK(profile.increments[1].workload_id == "film");
}

TEST_CASE("a profile needs no more than idle, and is named like its file") {
  const model::Profile profile = value_of(read_profile("[watts]\nidle = 6\n"));
  CHECK(profile.name == "box");
  CHECK(profile.off == model::PowerRange(watts(0)));
  CHECK_FALSE(profile.sleep.has_value());
  CHECK_FALSE(profile.busy.has_value());
  CHECK_FALSE(profile.max.has_value());
  CHECK_FALSE(profile.full_load_place.has_value());
  CHECK(profile.curve == model::Curve::linear);
  CHECK(profile.increments.empty());
}

TEST_CASE("a table of loads stands for idle, busy and curve, and two numbers are no range") {
  const model::Profile profile = value_of(read_profile("[watts]\nat_load = [10, 29]\nmax = 10\n"));
  CHECK(profile.at_load == std::vector<units::Power>{watts(10), watts(29)});
  CHECK(profile.idle == model::PowerRange(watts(10)));
  CHECK_FALSE(profile.busy.has_value());
  CHECK(diag::to_text(profile.full_load_place.value()) == "box.toml:2:1");
}

TEST_CASE("busy may be as low as idle at its highest") {
  CHECK(read_profile("[watts]\nidle = [10, 12]\nbusy = [12, 14]\nmax = 12\n").value.has_value());
}

TEST_CASE("watts for each unit: a figure, or a first one and each further one") {
  const auto plain = std::get<model::PerUnit>(film("[3.0, 3.2]").form);
  CHECK_FALSE(plain.first.has_value());
  CHECK(plain.each == model::PowerRange(watts(3.0), watts(3.2)));
  const auto both = std::get<model::PerUnit>(film("{ first = 6, each = [2, 3] }").form);
  CHECK(both.first == model::PowerRange(watts(6)));
  CHECK(both.each == model::PowerRange(watts(2), watts(3)));
  const auto first = std::get<model::PerUnit>(film("{ first = 6 }").form);
  CHECK(first.first == model::PowerRange(watts(6)));
  CHECK(first.each == model::PowerRange(watts(0)));
  const auto each = std::get<model::PerUnit>(film("{ each = 6 }").form);
  CHECK_FALSE(each.first.has_value());
  CHECK(each.each == model::PowerRange(watts(6)));
}

TEST_CASE("watts at 1, 2, 3 units are a table, of one number at least") {
  const auto table = std::get<model::UnitTable>(film("{ table = [6, 6, 9.5] }").form);
  CHECK(table.watts_at == std::vector<units::Power>{watts(6), watts(6), watts(9.5)});
  CHECK(std::get<model::UnitTable>(film("{ table = [4] }").form).watts_at.size() == 1);
}

TEST_CASE("a load is a fraction for each unit, above 1 as well") {
  const auto load = std::get<model::LoadPerUnit>(film("{ load = [0.05, 1.5] }").form);
  CHECK(load.fraction == units::Range<double>(0.05, 1.5));
}

TEST_CASE("a group goes with watts or stands alone") {
  CHECK(film("{ each = 1, group = \"disks\" }").group == std::size_t{0});
  CHECK(film("{ table = [1, 2], group = \"disks\" }").group == std::size_t{0});
  const model::Increment alone = film("{ group = \"disks\" }");
  CHECK(std::holds_alternative<model::GroupOnly>(alone.form));
  CHECK(alone.group == std::size_t{0});
  CHECK_FALSE(film("3").group.has_value());
}

TEST_CASE("an increment may be a table with a header of its own") {
  const model::Profile profile =
      value_of(read_profile("[watts]\nidle = 1\n[increments.film]\nfirst = 6\neach = 2\n"));
  const auto form = std::get<model::PerUnit>(profile.increments.at(0).increment.form);
  CHECK(form.first == model::PowerRange(watts(6)));
}

TEST_CASE("numbers may be written in all ways of TOML, and no zero is negative") {
  const model::Profile profile =
      value_of(read_profile("[watts]\noff = -0.0\nidle = 0x0A\nbusy = 1_000\nmax = 1e3\n"));
  CHECK_FALSE(std::signbit(units::in_watts(profile.off.low)));
  CHECK(profile.idle == model::PowerRange(watts(10)));
  CHECK(profile.busy == model::PowerRange(watts(1000)));
  CHECK(profile.max == model::PowerRange(watts(1000)));
}
