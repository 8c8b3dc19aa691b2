#include "study_text.hpp"

#include <doctest/doctest.h>

#include <utility>
#include <variant>

namespace wattweek::tests {
namespace {

read::Surroundings no_files() {
  return {[](const std::string&, const std::string&, read::ShippedKind) {
            return read::Unreadable{"there are no files here"};
          },
          [](const std::string& name, std::chrono::year_month first, int months) {
            return calendar::zone_rules(name, first, months);
          }};
}

}  // namespace

read::StudyInput read_study(const std::string& text) {
  auto got = read::study({"study.toml", "study.toml", text}, no_files());
  for (const auto& problem : got.problems) FAIL_CHECK(diag::to_text(problem));
  REQUIRE(got.value.has_value());
  return std::move(*got.value);
}

Reckoned reckon(const std::string& text) {
  read::StudyInput input = read_study(text);
  auto assessed = decide::assess(input.study, input.zone);
  REQUIRE(std::holds_alternative<decide::Assessment>(assessed));
  return {std::move(input.study), std::move(input.zone),
          std::get<decide::Assessment>(std::move(assessed))};
}

}  // namespace wattweek::tests
