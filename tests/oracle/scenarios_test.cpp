// Scenarios reckoned in a hurry, held against whole assessments over studies of chance.

#include <doctest/doctest.h>

#include <cmath>

#include "dice.hpp"
#include "every_study.hpp"
#include "wattweek/calendar/study_fold.hpp"
#include "wattweek/decide/ranking.hpp"
#include "wattweek/decide/scenario.hpp"
#include "wattweek/decide/settled_study.hpp"
#include "wattweek/decide/what_if.hpp"

using namespace wattweek;
using namespace wattweek::oracle;

namespace {

// What is left where one bill is taken from another.
bool is_close(double a, double b) {
  return std::fabs(a - b) <= 1e-9 + 1e-9 * std::max(std::fabs(a), std::fabs(b));
}

std::string difference(const std::vector<decide::Totals>& got, const decide::Assessment& want) {
  for (std::size_t c = 0; c < got.size(); ++c) {
    const decide::CandidateResult& result = want.candidates[c];
    const std::string whose = " of candidate " + std::to_string(c);
    if (!is_close(got[c].energy_kwh, units::in_kilowatt_hours(result.energy))) {
      return "energy" + whose;
    }
    if (!is_close(got[c].cost, units::in_currency(result.cost.cost))) return "cost" + whose;
    if (result.lifetime && !is_close(got[c].present_cost, result.lifetime->present_cost)) {
      return "present cost" + whose;
    }
  }
  return "";
}

// The largest difference in a cell between energy alone and a ledger, as a fraction of the largest.
double energy_difference(energy::Reckoner& kept, const energy::CandidatePlan& plan,
                         const power::CandidateLaw& law) {
  energy::Ledger ledger;
  Eigen::VectorXd kwh;
  REQUIRE(!energy::Reckoner(plan).reckon(law, ledger));
  REQUIRE(!kept.reckon_energy(law, kwh));
  const Eigen::VectorXd rows = ledger.kwh.rowwise().sum();
  return (rows - kwh).cwiseAbs().maxCoeff() / std::max(1e-9, rows.maxCoeff());
}

void settle_all(decide::SettledStudy& settled, Dice& dice) {
  for (std::size_t r = 0; r < settled.keys().size(); ++r) {
    settled.settle(r, dice.between(0, 1000) / 1000.0);
  }
}

/// Values of all factors, and the study edited by them: written down a second time, figure by
/// figure, for studies whose ranges are settled.
struct Factors {
  double price = 1;
  double use = 1;
  double use_of_first = 1;
  double household = 1;
  double purchase = 1;
  double idle_of_last = 1;
};

void multiply_idle(model::Device& device, double factor) {
  model::Profile profile = *device.profile;
  if (!profile.at_load.empty()) return;
  const units::Power idle = profile.idle.central() * factor;
  profile.idle = idle;
  if (profile.busy) profile.busy = std::max(idle, profile.busy->central());
  if (profile.max) profile.max = std::max(idle, profile.max->central());
  device.profile = std::make_shared<const model::Profile>(profile);
}

model::Study edited(model::Study study, const decide::Assessment& as_written,
                    const Factors& factors) {
  for (model::Band& band : study.tariff.bands) band.price = band.price.central() * factors.price;
  for (model::Block& block : study.tariff.blocks) {
    block.price = block.price.central() * factors.price;
  }
  for (std::size_t w = 0; w < study.workloads.size(); ++w) {
    for (model::Use& use : study.workloads[w].uses) {
      double share = use.share.central() * factors.use;
      if (w == 0) share *= factors.use_of_first;
      use.share = std::min(1.0, share);
    }
  }
  for (model::Candidate& candidate : study.candidates) {
    candidate.purchase = candidate.purchase.central() * factors.purchase;
  }
  for (model::Device& device : study.candidates.back().devices) {
    multiply_idle(device, factors.idle_of_last);
  }
  std::array<units::Energy, 12> kwh{};
  for (std::size_t m = 0; m < as_written.months.size(); ++m) {
    kwh[static_cast<unsigned>(as_written.months[m].month.month()) - 1] =
        as_written.without.household[m] * factors.household;
  }
  study.household = {kwh, std::nullopt, {}};
  return study;
}

std::vector<decide::Sweep> sweeps_of(const model::Study& study, const Factors& low,
                                     const Factors& high) {
  using Kind = decide::Factor::Kind;
  std::vector<decide::Sweep> sweeps = {
      {{Kind::price, 0}, low.price, high.price, 2},
      {{Kind::use, 0}, low.use, high.use, 2},
      {{Kind::household, 0}, low.household, high.household, 2},
      {{Kind::purchase, 0}, low.purchase, high.purchase, 2},
      {{Kind::idle_of, study.candidates.size() - 1}, low.idle_of_last, high.idle_of_last, 2}};
  if (!study.workloads.empty()) {
    sweeps.push_back({{Kind::use_of, 0}, low.use_of_first, high.use_of_first, 2});
  }
  return sweeps;
}

Factors random_factors(Dice& dice, int low_milli, int high_milli) {
  const auto factor = [&] { return dice.between(low_milli, high_milli) / 1000.0; };
  return {factor(), factor(), factor(), factor(), factor(), factor()};
}

}  // namespace

TEST_CASE("energy alone is the sum of the ledger's causes, from law to law with one reckoner") {
  for_random_studies(
      11001, 150, false, [](const read::StudyInput& input, const decide::Assessment& assessment) {
        Dice dice(assessment.candidates.size() + 5);
        const calendar::FoldedStudy folded = calendar::fold_study(input.study, input.zone);
        decide::SettledStudy settled(input.study);
        for (std::size_t c = 0; c < input.study.candidates.size(); ++c) {
          const auto plan = energy::plan_candidate(input.study, c, folded);
          energy::Reckoner kept(plan);
          const power::CandidateLaw central = power::central_law(input.study, c);
          CHECK(energy_difference(kept, plan, central) < 1e-12);
          settle_all(settled, dice);
          const power::CandidateLaw other = power::central_law(settled.study(), c);
          CHECK(energy_difference(kept, plan, other) < 1e-12);
          CHECK(energy_difference(kept, plan, central) < 1e-12);
        }
      });
}

TEST_CASE("ranges at their midpoints give the central result, and settled ones that of the study") {
  for_random_studies(
      12001, 150, false, [](const read::StudyInput& input, const decide::Assessment& assessment) {
        const decide::ScenarioPlan plan = decide::plan_scenarios(input.study, input.zone);
        decide::ScenarioReckoner reckoner(plan);
        std::vector<decide::Totals> totals;
        decide::SettledStudy settled(input.study);
        REQUIRE(!reckoner.reckon(settled.study(), totals));
        CHECK(difference(totals, assessment) == "");
        Dice dice(settled.keys().size());
        settle_all(settled, dice);
        const auto drawn = decide::assess(settled.study(), input.zone);
        if (!std::holds_alternative<decide::Assessment>(drawn)) return;  // Household below zero.
        REQUIRE(!reckoner.reckon(settled.study(), totals));
        CHECK(difference(totals, std::get<decide::Assessment>(drawn)) == "");
      });
}

TEST_CASE("rows of a grid are studies with other figures") {
  std::uint64_t seed = 0;
  for (const bool whole_year : {false, true}) {
    for_random_studies(
        13001, 60, whole_year,
        [&seed](const read::StudyInput& input, const decide::Assessment& assessment) {
          if (input.study.months > 12) return;  // Months of one name, of two years.
          const decide::SettledStudy settled(input.study);
          Dice dice(++seed);
          const Factors low = random_factors(dice, 0, 900);
          const Factors high = random_factors(dice, 901, 2500);
          const auto sweeps = sweeps_of(settled.study(), low, high);
          decide::WhatIf what_if(settled.study(), input.zone, sweeps, 1);
          REQUIRE(what_if.prepare().empty());
          for (std::size_t row = 3; row < what_if.rows(); row += 11) {
            decide::Rows rows;
            REQUIRE(what_if.reckon(row, 1, rows).empty());
            const std::vector<double> at = values_in_row(what_if.sweeps(), row);
            const Factors factors{at[0], at[1], at.size() > 5 ? at[5] : 1, at[2], at[3], at[4]};
            const auto by_hand =
                decide::assess(edited(settled.study(), assessment, factors), input.zone);
            REQUIRE(std::holds_alternative<decide::Assessment>(by_hand));
            CHECK(difference(rows.totals, std::get<decide::Assessment>(by_hand)) == "");
          }
        });
  }
}

TEST_CASE("draws of any study are the same with one thread and with seven") {
  for_random_studies(14001, 30, true, [](const read::StudyInput& input, const decide::Assessment&) {
    const auto of_one = decide::draw(input.study, input.zone, {100, 9, 1});
    const auto of_seven = decide::draw(input.study, input.zone, {100, 9, 7});
    REQUIRE(of_one.index() == of_seven.index());
    const auto* a = std::get_if<decide::Uncertainty>(&of_one);
    if (a == nullptr) return;
    const auto& b = std::get<decide::Uncertainty>(of_seven);
    double times_cheapest = 0;
    for (std::size_t c = 0; c < a->candidates.size(); ++c) {
      CHECK(a->candidates[c].cost.mean == b.candidates[c].cost.mean);
      CHECK(a->candidates[c].cost.sd == b.candidates[c].cost.sd);
      CHECK(a->candidates[c].energy_kwh.p97_5 == b.candidates[c].energy_kwh.p97_5);
      CHECK(a->candidates[c].cheapest == b.candidates[c].cheapest);
      CHECK(a->candidates[c].cost.p2_5 <= a->candidates[c].cost.p50);
      CHECK(a->candidates[c].cost.p50 <= a->candidates[c].cost.p97_5);
      times_cheapest += a->candidates[c].cheapest.value_or(0);
    }
    if (a->best_two) CHECK(times_cheapest == doctest::Approx(1).epsilon(1e-12));
    CHECK(a->explained == b.explained);
    REQUIRE(a->drivers.size() == b.drivers.size());
    double shares = 0;
    for (std::size_t d = 0; d < a->drivers.size(); ++d) {
      CHECK(a->drivers[d].key == b.drivers[d].key);
      CHECK(a->drivers[d].share == b.drivers[d].share);
      shares += a->drivers[d].share;
    }
    if (!a->drivers.empty()) CHECK(shares == doctest::Approx(1).epsilon(1e-12));
  });
}
