// Each note in its whole text.

#include "wattweek/decide/notes.hpp"

#include <doctest/doctest.h>

#include <algorithm>

#include "../support/study_text.hpp"
#include "../support/week_text.hpp"

using namespace wattweek;
using namespace wattweek::tests;

namespace {

std::vector<std::string> notes_of(const std::string& text) {
  std::vector<std::string> texts;
  for (const decide::Note& note : reckon(text).result.notes) {
    texts.push_back(decide::where_text(note) + ": " + note.code + ": " + note.text);
  }
  return texts;
}

const std::string kBox =
    "[[candidate]]\nid = \"box\"\n[[candidate.device]]\nname = \"box\"\nwatts.idle = 10\n";

using Notes = std::vector<std::string>;

}  // namespace

TEST_CASE("a plain study leaves nothing to note") {
  CHECK(notes_of(kYear2027 + kFlatTariff + kBox) == Notes{});
}

TEST_CASE("windows, dates and holidays outside the study are noted") {
  const Notes got = notes_of(kYear2027 + R"(
holidays = [2026-12-25, 2027-12-25]
holidays_as = "sun"
[tariff]
currency = "EUR"
[[tariff.band]]
name = "leap"
price = 0.1
dates = "2028-02-29..2028-02-29"
[[tariff.band]]
name = "all"
price = 0.30
[[workload]]
id = "film"
use = [ { dates = "2026-01-01..2026-12-30" } ]
[[away]]
dates = "2028-01-01..2028-01-14"
[[candidate]]
id = "box"
[[candidate.device]]
name = "box"
watts = { idle = 10, sleep = 1 }
increments = { film = 1 }
rest = [ { dates = "2028-01-01..2028-01-01", state = "sleep" } ]
)");
  REQUIRE(got.size() == 5);
  CHECK(got[0].find("never-holds: this window of the band 'leap' never holds in the study") !=
        std::string::npos);
  CHECK(got[1].find("never-holds: the holiday 2026-12-25 is not in the study") !=
        std::string::npos);
  CHECK(got[1].substr(0, 15) == "study.toml:5:13");
  CHECK(got[2].find("never-holds: this use of 'film' never holds in the study") !=
        std::string::npos);
  CHECK(got[3].find("never-holds: these dates away are not in the study") != std::string::npos);
  CHECK(got[4].find("never-holds: this rest of the device 'box' never holds in the study") !=
        std::string::npos);
}

TEST_CASE("a band that is always overruled and holidays that count as nothing are noted") {
  const Notes got = notes_of(kYear2027 + R"(
holidays = [2027-12-25]
[tariff]
currency = "EUR"
band = [ { name = "all", price = 0.3 }, { name = "night", price = 0.1, hours = "22:00-06:00" } ]
)" + kBox);
  REQUIRE(got.size() == 2);
  CHECK(got[0].find(
            "never-first: the band 'night' holds only where an earlier band holds too, so its "
            "price is never paid") != std::string::npos);
  CHECK(got[1].find(
            "holidays-unused: these holidays change nothing: no holidays_as says which day they "
            "count as") != std::string::npos);
}

TEST_CASE("what is skipped, unserved or overloaded is not like for like") {
  const Notes got = notes_of(kYear2027 + kFlatTariff + R"(
[[workload]]
id = "film"
use = [ { hours = "20:00-22:00" } ]
[[workload]]
id = "backup"
use = [ { hours = "02:00-04:00" } ]
[[candidate]]
id = "box"
skips = ["film"]
[[candidate.device]]
name = "store"
watts = { idle = 10, busy = 20, sleep = 1 }
increments = { backup = { load = 1.5 } }
rest = [ { hours = "03:00-05:00", state = "sleep" } ]
)");
  CHECK(
      got ==
      Notes{"box: skipped: it does not offer 'film' (730 unit-hours), so it is not like for like",
            "box: unserved: a device is at rest while 'backup' is wanted: 365 unit-hours go "
            "unserved, so it is not like for like",
            "box: overload: the device 'store' is asked for more than full load in 365 hours; work "
            "that does not fit is not stretched in time, so the figures are the least it can be "
            "and it is not like for like"});
}

TEST_CASE("a minimum bill that swallows a saving is noted") {
  const Notes got = notes_of(kYear2027 + R"(
[tariff]
currency = "EUR"
minimum_per_month = 20
band = [ { name = "all", price = 0.25 } ]
)" + kBox);
  CHECK(got ==
        Notes{"box: minimum-swallows: the minimum bill swallows 21.9 EUR of its cost: what is "
              "saved below the minimum is not saved on the bill"});
}

TEST_CASE("a minimum bill that swallows what negative prices would pay is noted") {
  const Notes got = notes_of(kYear2027 + R"(
[tariff]
currency = "EUR"
minimum_per_month = 0
band = [ { name = "all", price = -0.25 } ]
)" + kBox);
  CHECK(got ==
        Notes{"box: minimum-swallows: the minimum bill swallows 21.9 EUR of what it takes off "
              "the bill at negative prices"});
}

TEST_CASE("a price in cents, a short study and watts in kilowatts are noted") {
  const Notes got = notes_of(R"(
time_zone = "Etc/UTC"
start = 2027-01-01
months = 6
[tariff]
currency = "EUR"
band = [ { name = "all", price = 28.5 } ]
[[candidate]]
id = "box"
[[candidate.device]]
name = "box"
watts.idle = 0.0135
)");
  REQUIRE(got.size() == 3);
  CHECK(got[0].find(
            "scaled-to-year: the study covers 6 months; what is saved a year is scaled up from "
            "them, whatever the season") != std::string::npos);
  CHECK(got[1].find(
            "price-like-cents: a price of 28.5 EUR per kWh looks like one in hundredths; write "
            "0.285 if it is") != std::string::npos);
  CHECK(got[2].find(
            "watts-like-kilowatts: idle watts of 0.0135 of 'box' look like kilowatts; write 13.5 "
            "if they are") != std::string::npos);
}

TEST_CASE("a week in kilowatts is noted, one of a few watts is not") {
  const auto noted = [](double watts) {
    std::string found;
    for (const std::string& note : notes_of(kYear2027 + kFlatTariff +
                                            "[[candidate]]\nid = \"box\"\n[[candidate.device]]\n"
                                            "name = \"box\"\nwatts = { " +
                                            tests::steady_week(watts) + " }\n")) {
      found += note;
    }
    return found;
  };
  CHECK(noted(0.0125).find("watts-like-kilowatts: mean watts of 0.0125 over the week of 'box' look "
                           "like kilowatts; multiply them by 1000 if they are") !=
        std::string::npos);
  CHECK(noted(1) == "");
  CHECK(noted(0) == "");
}

TEST_CASE("a price of 30 a kWh is ordinary where the currency has no hundredths") {
  CHECK(notes_of(kYear2027 +
                 "[tariff]\ncurrency = \"JPY\"\nband = [ { name = \"all\", price = 30 } ]\n" + kBox)
            .empty());
}

TEST_CASE("busy watts that nothing uses, and a meter that the study does not know, are noted") {
  const Notes got = notes_of(kYear2027 + kFlatTariff + R"(
[[candidate]]
id = "box"
[[candidate.device]]
name = "box"
meter = "plug"
watts = { idle = 10, busy = 30 }
)");
  REQUIRE(got.size() == 2);
  CHECK(got[0].find("busy-unused: nothing uses the watts at full load of ") != std::string::npos);
  CHECK(got[1].find(
            "meter-unknown: the study has no [[meter]] 'plug', so its error is not counted") !=
        std::string::npos);
}
