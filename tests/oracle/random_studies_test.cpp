// The engine, held against the dumb reckoning on studies of chance.

#include <doctest/doctest.h>

#include "differences.hpp"
#include "dumb_reckoning.hpp"
#include "lots.hpp"
#include "reading.hpp"

using namespace wattweek;
using namespace wattweek::oracle;

namespace {

std::string problems_on_lines(const std::vector<diag::Diagnostic>& problems) {
  std::string text;
  for (const diag::Diagnostic& problem : problems) text += diag::to_text(problem) + "\n";
  return text;
}

// Empty where engine and dumb reckoning agree on every member of the results.
std::string disagreement(const StudyText& text) {
  const read::Read<read::StudyInput> got = read_text(text);
  if (!got.value) return "not read: " + problems_on_lines(got.problems);
  const model::Study& study = got.value->study;
  const Reckoned dumb = reckon_dumbly(study);
  const auto engine = decide::assess(study, got.value->zone);
  if (const auto* problems = std::get_if<std::vector<diag::Diagnostic>>(&engine)) {
    return dumb.household_below_zero ? "" : "not assessed: " + problems_on_lines(*problems);
  }
  if (dumb.household_below_zero) return "the household falls below zero, which went unseen";
  return on_lines(differences(study, std::get<decide::Assessment>(engine), dumb), 10);
}

void hold_engine_against_dumb_reckoning(std::uint64_t first_seed, int count, bool whole_year) {
  for (int i = 0; i < count / kLotDivisor + 1; ++i) {
    const StudyWish wish{first_seed + static_cast<std::uint64_t>(i), whole_year};
    const StudyText text = random_study(wish);
    const std::string found = disagreement(text);
    const std::string shape = whole_year ? ", a whole year\n" : "\n";
    CHECK_MESSAGE(found.empty(), "seed ", wish.seed, shape, found, text.all());
  }
}

}  // namespace

TEST_CASE("any month is reckoned as minute by minute, first hundred") {
  hold_engine_against_dumb_reckoning(1, 100, false);
}

TEST_CASE("any month is reckoned as minute by minute, second hundred") {
  hold_engine_against_dumb_reckoning(1001, 100, false);
}

TEST_CASE("any month is reckoned as minute by minute, third hundred") {
  hold_engine_against_dumb_reckoning(2001, 100, false);
}

TEST_CASE("any month is reckoned as minute by minute, fourth hundred") {
  hold_engine_against_dumb_reckoning(3001, 100, false);
}

TEST_CASE("any year and its horizon are reckoned as minute by minute, first lot") {
  hold_engine_against_dumb_reckoning(1, 24, true);
}

TEST_CASE("any year and its horizon are reckoned as minute by minute, second lot") {
  hold_engine_against_dumb_reckoning(1001, 24, true);
}

TEST_CASE("the same seed gives the same study") {
  CHECK(random_study({7, false}).all() == random_study({7, false}).all());
  CHECK(random_study({7, false}).all() != random_study({8, false}).all());
}
