#include "wattweek/calendar/zone_database.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <variant>

#include "zones.hpp"

using namespace wattweek;
using namespace std::chrono_literals;

namespace {

std::string refusal(const std::string& name) {
  const auto got = calendar::zone_rules(name, 2027y / std::chrono::January, 12);
  REQUIRE(std::holds_alternative<calendar::NoZone>(got));
  return std::get<calendar::NoZone>(got).reason;
}

}  // namespace

TEST_CASE("the changes of a zone are those of the IANA database") {
  const auto rules = tests::zone("Europe/Berlin", 2026);
  const calendar::OffsetChange spring{calendar::Instant{std::chrono::sys_days{2026y / 3 / 29} + 1h},
                                      2h};
  const calendar::OffsetChange autumn{
      calendar::Instant{std::chrono::sys_days{2026y / 10 / 25} + 1h}, 1h};
  CHECK(std::count(rules.changes.begin(), rules.changes.end(), spring) == 1);
  CHECK(std::count(rules.changes.begin(), rules.changes.end(), autumn) == 1);
}

TEST_CASE("clocks still change after 2037") {
  // Found with a library that stops reading at 2037.
  const auto rules = tests::zone("Europe/Berlin", 2060);
  CHECK(tests::hours_of(rules, tests::date(2060, 3, 28)) == 23);
}

TEST_CASE("a misspelt zone is told its nearest name") {
  CHECK(refusal("Europe/Dublim") == "no such time zone; did you mean 'Europe/Dublin'?");
  CHECK(refusal("europe/dublin") == "no such time zone; did you mean 'Europe/Dublin'?");
  CHECK(refusal("Middle of nowhere") ==
        "no such time zone; expected an IANA time zone name such as Europe/Dublin");
}

TEST_CASE("a name that climbs out of the zone folder is no zone") {
  for (const char* name :
       {"../../etc/passwd", "/etc/localtime", "Europe/../Europe/Dublin", "Europe", "Europe/",
        "Europe//Dublin", "", "localtime", "right/Europe/Dublin", "posixrules", ".", "tzdata.zi"}) {
    CAPTURE(name);
    CHECK(refusal(name).substr(0, 17) == "no such time zone");
  }
}
