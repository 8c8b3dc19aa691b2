// Energy without who draws it, held against the ledger, from law to law.

#include <doctest/doctest.h>

#include <fstream>
#include <random>
#include <sstream>

#include "../support/study_text.hpp"
#include "wattweek/calendar/study_fold.hpp"
#include "wattweek/energy/ledger.hpp"

using namespace wattweek;
using namespace wattweek::energy;

namespace {

read::StudyInput eight_services() {
  std::ifstream file(std::string(WATTWEEK_SOURCE_DIR) + "/tests/bench/eight-services.toml");
  std::ostringstream text;
  text << file.rdbuf();
  return tests::read_study(text.str());
}

/// One candidate, by both ways; a fresh reckoner tells what is right.
class BothWays {
 public:
  BothWays(const model::Study& study, const calendar::ZoneRules& zone, std::size_t candidate)
      : plan_(plan_candidate(study, candidate, calendar::fold_study(study, zone))), kept_(plan_) {}

  /// The largest difference in a cell between the energy alone, from the reckoner that is kept,
  /// and the ledger of a fresh one, as a fraction of the largest cell.
  double difference(const power::CandidateLaw& law) {
    Ledger ledger;
    Eigen::VectorXd kwh;
    REQUIRE(!Reckoner(plan_).reckon(law, ledger));
    REQUIRE(!kept_.reckon_energy(law, kwh));
    const Eigen::VectorXd rows = ledger.kwh.rowwise().sum();
    REQUIRE(rows.size() == kwh.size());
    return (rows - kwh).cwiseAbs().maxCoeff() / rows.maxCoeff();
  }

  /// The same of a whole ledger from the reckoner that is kept: it must be equal.
  bool has_same_ledger(const power::CandidateLaw& law) {
    Ledger of_fresh;
    Ledger of_kept;
    REQUIRE(!Reckoner(plan_).reckon(law, of_fresh));
    REQUIRE(!kept_.reckon(law, of_kept));
    return of_fresh.kwh == of_kept.kwh && of_fresh.highest_w == of_kept.highest_w;
  }

 private:
  CandidatePlan plan_;
  Reckoner kept_;
};

}  // namespace

TEST_CASE("energy alone is the ledger's, by month and band") {
  const read::StudyInput input = eight_services();
  for (std::size_t c = 0; c < input.study.candidates.size(); ++c) {
    CAPTURE(c);
    BothWays both(input.study, input.zone, c);
    CHECK(both.difference(power::central_law(input.study, c)) < 1e-12);
  }
}

TEST_CASE("energy alone stays right from law to law, there and back") {
  const read::StudyInput input = eight_services();
  for (std::size_t c = 0; c < input.study.candidates.size(); ++c) {
    CAPTURE(c);
    BothWays both(input.study, input.zone, c);
    const power::CandidateLaw as_written = power::central_law(input.study, c);
    std::mt19937_64 engine(c + 1);
    const auto factor = [&engine] { return static_cast<double>(engine() % 1000) / 999.0; };
    for (int turn = 0; turn < 12; ++turn) {
      power::CandidateLaw law = as_written;
      // Some uses alone, so that of the sets that hold together some change and some do not.
      for (auto& uses : law.uses) {
        for (power::UseLaw& use : uses) {
          if (turn % 3 != 0 && engine() % 2 == 0) use.share *= turn == 4 ? 0 : factor();
        }
      }
      if (turn % 4 == 1) law.devices[0].idle_w *= 1 + factor();
      if (turn % 4 == 2) law.devices[0].sleep_w += 1;
      law.devices[0].max_w = std::max(law.devices[0].max_w, law.devices[0].idle_w);
      CHECK(both.difference(law) < 1e-12);
      if (turn % 5 == 0) CHECK(both.has_same_ledger(law));
    }
    CHECK(both.difference(as_written) < 1e-12);
  }
}

TEST_CASE("a law that is refused leaves the next one right") {
  // Three workloads of 120 units under a cap: equal increments merge, odd ones do not.
  const read::StudyInput input = tests::read_study(tests::kYear2027 + tests::kFlatTariff + R"(
[[workload]]
id = "films"
use = [ { units = 120, share = 0.5, pattern = "independent" } ]
[[workload]]
id = "music"
use = [ { units = 120, share = 0.5, pattern = "independent" } ]
[[workload]]
id = "mail"
use = [ { units = 120, share = 0.5, pattern = "independent" } ]
[[candidate]]
id = "box"
[[candidate.device]]
watts = { idle = 10, max = 100 }
increments = { films = 1, music = 1, mail = 1 }
)");
  const CandidatePlan plan =
      plan_candidate(input.study, 0, calendar::fold_study(input.study, input.zone));
  const power::CandidateLaw as_written = power::central_law(input.study, 0);
  power::CandidateLaw odd = as_written;
  odd.devices[0].tasks[1].first_w = odd.devices[0].tasks[1].each_w = 1.4142135;
  odd.devices[0].tasks[2].first_w = odd.devices[0].tasks[2].each_w = 1.7320508;
  Reckoner kept(plan);
  Eigen::VectorXd before;
  Eigen::VectorXd after;
  REQUIRE(!kept.reckon_energy(as_written, before));
  const auto refused = kept.reckon_energy(odd, after);
  REQUIRE(refused);
  CHECK(refused->device == 0);
  REQUIRE(!kept.reckon_energy(as_written, after));
  CHECK(before == after);
}
