// Clock times into moments, over the changes of a zone.

#include "logs/local_clock.hpp"

#include <doctest/doctest.h>

#include "logged.hpp"
#include "logs/stamps.hpp"

using namespace wattweek::logs;

namespace {

// Every half-hour of 2023 to 2025, as the clocks of a zone show it, must lead back to it.
void check_forth(const std::string& name) {
  CAPTURE(name);
  const auto zone = zone_of(name);
  LocalClock clock(zone, false);
  for (Microseconds at = 19'358 * kDay; at < 20'454 * kDay; at += kDay / 48) {
    REQUIRE(clock.at(at + utc_offset_at(zone, at)) == at);
  }
}

void check_back(const std::string& name) {
  CAPTURE(name);
  const auto zone = zone_of(name);
  LocalClock clock(zone, true);
  for (Microseconds at = 20'454 * kDay; at > 19'358 * kDay; at -= kDay / 48) {
    REQUIRE(clock.at(at + utc_offset_at(zone, at)) == at);
  }
  CHECK(clock.without_first_pass().empty());
}

}  // namespace

TEST_CASE("clock times that go on lead back to the moments they were shown at") {
  for (const char* const name :
       {"Europe/Berlin", "Europe/Dublin", "America/New_York", "Australia/Lord_Howe",
        "Asia/Kathmandu", "Etc/UTC", "Africa/Casablanca"}) {
    check_forth(name);
  }
}

TEST_CASE("clock times from the newest on lead back to the moments they were shown at") {
  for (const char* const name : {"Europe/Berlin", "America/New_York", "Australia/Lord_Howe"}) {
    check_back(name);
  }
}

TEST_CASE("hours that the clocks skip have no moments, those around them have") {
  LocalClock clock(zone_of("Europe/Berlin"), false);
  // 31 March 2024 00:00 is day 19813.
  const Microseconds midnight = 19'813 * kDay, hour = kDay / 24;
  CHECK(clock.at(midnight + 2 * hour - 1) == midnight + hour - 1);
  CHECK_FALSE(clock.at(midnight + 2 * hour));
  CHECK_FALSE(clock.at(midnight + 3 * hour - 1));
  CHECK(clock.at(midnight + 3 * hour) == midnight + hour);
}
