#pragma once
// A study's text, read and reckoned, for tests that speak of whole studies.

#include <string>

#include "wattweek/decide/assessment.hpp"
#include "wattweek/read/read.hpp"

namespace wattweek::tests {

struct Reckoned {
  model::Study study;
  calendar::ZoneRules zone;
  decide::Assessment result;
};

/// Reads a valid study without files; fails the test where it is not valid.
read::StudyInput read_study(const std::string& text);

/// Reads and reckons a valid study.
Reckoned reckon(const std::string& text);

/// The first lines of a study of the year 2027 in a zone whose clocks never change.
inline const std::string kYear2027 = R"(
time_zone = "Etc/UTC"
start = 2027-01-01
)";

/// One price, 0.30 EUR per kWh.
inline const std::string kFlatTariff = R"(
[tariff]
currency = "EUR"
[[tariff.band]]
name = "all"
price = 0.30
)";

}  // namespace wattweek::tests
