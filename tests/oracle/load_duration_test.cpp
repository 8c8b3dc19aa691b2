// For how many hours how much is drawn, held against every joint outcome of every minute.

#include "wattweek/decide/load_duration.hpp"

#include <map>

#include "differences.hpp"
#include "every_study.hpp"
#include "minutes.hpp"
#include "watts.hpp"

using namespace wattweek;
using namespace wattweek::oracle;

namespace {

// Watts and hours of every joint outcome, nothing merged but what is equal to the last digit.
std::map<double, double> dumb_loads(const model::Study& study, std::size_t candidate,
                                    const Minutes& minutes) {
  std::map<Situation, int> count;
  for (const auto& month : minutes.count) {
    for (const auto& band : month) {
      for (const auto& [situation, in_band] : band) count[situation] += in_band;
    }
  }
  std::map<double, double> loads;
  for (const auto& [situation, in_all] : count) {
    const CandidateExpected expected = expected_draw(study, candidate, situation);
    for (const auto& [watts, probability] : expected.outcomes) {
      loads[watts] += probability * in_all / 60.0;
    }
  }
  return loads;
}

// Hours at these watts, give or take what sums in another order differ by.
double hours_near(const std::map<double, double>& loads, double watts) {
  const double near = 3e-9 * std::max(1.0, watts);
  double hours = 0;
  for (auto at = loads.lower_bound(watts - near); at != loads.end() && at->first <= watts + near;
       ++at) {
    hours += at->second;
  }
  return hours;
}

std::string what_differs(const decide::LoadDuration& loads, const std::map<double, double>& dumb) {
  std::map<double, double> engine;
  for (const decide::LoadHours& load : loads) engine[load.watts] = load.hours;
  for (const auto& [watts, hours] : engine) {
    if (!agree(hours_near(engine, watts), hours_near(dumb, watts))) {
      return "hours at " + std::to_string(watts) + " W";
    }
  }
  for (const auto& [watts, hours] : dumb) {
    if (!agree(hours_near(engine, watts), hours_near(dumb, watts))) {
      return "hours at " + std::to_string(watts) + " W of the outcomes one by one";
    }
  }
  return "";
}

}  // namespace

TEST_CASE("load durations are those of every outcome of every minute") {
  for_random_studies(
      11001, 60, false, [](const read::StudyInput& input, const decide::Assessment&) {
        const Minutes minutes = walk_minutes(input.study);
        const auto durations = decide::load_durations(input.study, input.zone);
        for (std::size_t c = 0; c < durations.size(); ++c) {
          CAPTURE(c);
          CHECK(what_differs(durations[c], dumb_loads(input.study, c, minutes)) == "");
        }
      });
}

TEST_CASE("load durations sum to the hours and the energy, the most of them first") {
  for_random_studies(12001, 250, false,
                     [](const read::StudyInput& input, const decide::Assessment& assessment) {
                       const auto durations = decide::load_durations(input.study, input.zone);
                       REQUIRE(durations.size() == assessment.candidates.size());
                       for (std::size_t c = 0; c < durations.size(); ++c) {
                         REQUIRE_FALSE(durations[c].empty());
                         double hours = 0;
                         double kwh = 0;
                         bool falls = true;
                         double before_w = 2 * durations[c].front().watts + 1;
                         for (const decide::LoadHours& load : durations[c]) {
                           falls = falls && load.watts < before_w && load.hours > 0;
                           before_w = load.watts;
                           hours += load.hours;
                           kwh += load.watts * load.hours / 1000;
                         }
                         const decide::CandidateResult& result = assessment.candidates[c];
                         CHECK(falls);
                         CHECK(agree(hours, assessment.hours));
                         CHECK(agree(kwh, units::in_kilowatt_hours(result.energy)));
                         CHECK(agree(durations[c].front().watts, result.ledger.highest_w));
                       }
                     });
}
