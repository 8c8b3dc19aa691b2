#include "cli/place_and_time.hpp"

#include "program.hpp"

namespace wattweek::cli {
namespace {

namespace fs = std::filesystem;
using namespace std::chrono_literals;

constexpr const char* kNoFile = "/nowhere/localtime";

TEST_CASE("place and time: the variable TZ names the zone, as a name or as a file") {
  for (const char* tz : {"Europe/Dublin", ":Europe/Dublin", "/usr/share/zoneinfo/Europe/Dublin",
                         ":/usr/share/zoneinfo/Europe/Dublin"}) {
    CAPTURE(tz);
    CHECK(zone_of_machine(tz, kNoFile) == "Europe/Dublin");
  }
}

TEST_CASE("place and time: else the link of the local time does, by whatever way it leads") {
  const TemporaryFolder folder;
  const std::string link = (folder.path() / "localtime").string();
  for (const char* target :
       {"/usr/share/zoneinfo/Europe/Dublin", "../usr/share/zoneinfo/Europe/Dublin"}) {
    fs::remove(link);
    fs::create_symlink(target, link);
    CHECK(zone_of_machine(nullptr, link) == "Europe/Dublin");
    CHECK(zone_of_machine("", link) == "Europe/Dublin");
    CHECK(zone_of_machine("no/such-zone", link) == "Europe/Dublin");
    CHECK(zone_of_machine("Asia/Tokyo", link) == "Asia/Tokyo");
  }
}

TEST_CASE("place and time: a link to a link into the zone folder counts") {
  const TemporaryFolder folder;
  fs::create_directories(folder.path() / "zoneinfo/Asia");
  folder.write("zoneinfo/Asia/Tokyo", "");
  fs::create_symlink(folder.path() / "zoneinfo/Asia/Tokyo", folder.path() / "own");
  fs::create_symlink("own", folder.path() / "localtime");
  CHECK(zone_of_machine(nullptr, (folder.path() / "localtime").string()) == "Asia/Tokyo");
}

TEST_CASE("place and time: a machine that names no zone has none") {
  const TemporaryFolder folder;
  folder.write("localtime", "a copy, not a link");
  const std::string copy = (folder.path() / "localtime").string();
  for (const char* tz : {"", ":", "GMT+25abc", "localtime", "../../etc/passwd"}) {
    CAPTURE(tz);
    CHECK(zone_of_machine(tz, copy) == std::nullopt);
    CHECK(zone_of_machine(tz, kNoFile) == std::nullopt);
  }
}

TEST_CASE("place and time: what is given comes before the day and the machine") {
  const auto found =
      place_and_time_of({{{"start", {"2031-05"}}, {"zone", {"Asia/Tokyo"}}}, {}}, 2029y / 12 / 31);
  const auto& all = std::get<PlaceAndTime>(found);
  CHECK(all.start == 2031y / 5);
  CHECK(all.is_start_given);
  CHECK(all.zone == "Asia/Tokyo");
  CHECK(all.zone_source == Source::given);
}

TEST_CASE("place and time: without a start it is January of the day's year") {
  const auto found = place_and_time_of({{{"zone", {"Etc/UTC"}}}, {}}, 2029y / 12 / 31);
  const auto& all = std::get<PlaceAndTime>(found);
  CHECK(all.start == 2029y / 1);
  CHECK_FALSE(all.is_start_given);
}

}  // namespace
}  // namespace wattweek::cli
