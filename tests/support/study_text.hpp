#pragma once
// A study's text, read and reckoned, for tests that speak of whole studies.

#include <doctest/doctest.h>

#include <string>
#include <variant>

#include "wattweek/decide/assessment.hpp"
#include "wattweek/read/read.hpp"

namespace wattweek::tests {

struct Reckoned {
  model::Study study;
  calendar::ZoneRules zone;
  decide::Assessment result;
};

inline read::Surroundings no_files() {
  return {[](const std::string&, const std::string&, read::ShippedKind) {
            return read::Unreadable{"there are no files here"};
          },
          [](const std::string& name, std::chrono::year_month first, int months) {
            return calendar::zone_rules(name, first, months);
          }};
}

/// Reads a valid study without files; fails the test where it is not valid.
inline read::StudyInput read_study(const std::string& text) {
  auto got = read::study({"study.toml", "study.toml", text}, no_files());
  for (const auto& problem : got.problems) FAIL_CHECK(diag::to_text(problem));
  REQUIRE(got.value.has_value());
  return std::move(*got.value);
}

/// Reads and reckons a valid study.
inline Reckoned reckon(const std::string& text) {
  read::StudyInput input = read_study(text);
  auto assessed = decide::assess(input.study, input.zone);
  REQUIRE(std::holds_alternative<decide::Assessment>(assessed));
  return {std::move(input.study), std::move(input.zone),
          std::get<decide::Assessment>(std::move(assessed))};
}

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
