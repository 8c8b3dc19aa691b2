// Charges reckoned once for many scenarios, held against whole bills.

#include "wattweek/billing/charges.hpp"

#include <doctest/doctest.h>

#include <random>

#include "wattweek/billing/cost.hpp"

using namespace wattweek;
using namespace wattweek::billing;
using namespace wattweek::units;

namespace {

class Chance {
 public:
  explicit Chance(std::uint64_t seed) : engine_(seed) {}
  int below(int sides) { return static_cast<int>(engine_() % static_cast<unsigned>(sides)); }
  bool one_in(int sides) { return below(sides) == 0; }
  double between(double low, double high) {
    return low + (high - low) * static_cast<double>(engine_() >> 11U) * 0x1p-53;
  }

 private:
  std::mt19937_64 engine_;
};

Ladder random_ladder(Chance& chance) {
  Ladder ladder;
  double up_to_kwh = 0;
  for (int steps = chance.below(3); steps > 0; --steps) {
    up_to_kwh += chance.between(1, 150);
    ladder.push_back({kilowatt_hours(up_to_kwh), per_kilowatt_hour(chance.between(-0.1, 0.4))});
  }
  ladder.push_back({std::nullopt, per_kilowatt_hour(chance.between(-0.1, 0.4))});
  return ladder;
}

TariffLaw random_law(Chance& chance) {
  TariffLaw law;
  law.tax = chance.one_in(3) ? 0 : chance.between(0, 0.3);
  law.standing_per_day = money(chance.one_in(3) ? 0 : chance.between(-0.5, 1));
  law.standing_per_month = money(chance.one_in(3) ? 0 : chance.between(-5, 20));
  if (chance.one_in(2)) law.minimum_per_month = money(chance.between(0, 80));
  for (int bands = 1 + chance.below(3); bands > 0; --bands) {
    law.band_prices.push_back(per_kilowatt_hour(chance.between(-0.2, 0.6)));
  }
  const bool has_blocks = chance.one_in(2);
  for (Ladder& ladder : law.ladders) {
    if (has_blocks && !chance.one_in(4)) ladder = random_ladder(chance);
  }
  law.blocks_per = chance.one_in(2) ? model::BlocksPer::day : model::BlocksPer::month;
  if (law.blocks_per == model::BlocksPer::day) {  // A day's limits, not a month's.
    for (Ladder& ladder : law.ladders) {
      for (Step& step : ladder) {
        if (step.up_to) step.up_to = *step.up_to / 30.0;
      }
    }
  }
  return law;
}

struct Home {
  std::vector<BillingPeriod> periods;
  std::vector<Energy> household;
  Eigen::VectorXd kwh;  ///< Of the candidate, by cell.
};

Home random_home(Chance& chance, std::size_t bands) {
  Home home;
  const int months = 1 + chance.below(14);
  for (int m = 0; m < months; ++m) {
    BillingPeriod period{static_cast<unsigned>(m % 12), 28.0 + chance.below(4), {}};
    for (std::size_t b = 0; b < bands; ++b) {
      // A season's band has no hours in some months.
      period.band_hours.push_back(hours(b > 0 && chance.one_in(4) ? 0 : chance.between(1, 400)));
    }
    home.periods.push_back(period);
    home.household.push_back(kilowatt_hours(chance.one_in(4) ? 0 : chance.between(0, 400)));
  }
  home.kwh.resize(static_cast<Eigen::Index>(static_cast<std::size_t>(months) * bands));
  for (double& kwh : home.kwh) kwh = chance.one_in(5) ? 0 : chance.between(0, 120);
  return home;
}

double whole_cost(const TariffLaw& law, const Home& home) {
  const HouseholdBills bills = household_bills(law, home.periods, home.household);
  return in_currency(candidate_cost(bills, home.kwh).cost);
}

// What the bills' own size leaves of the last digit.
bool agree(double got, double want) {
  return std::abs(got - want) <= 1e-9 + 1e-12 * std::abs(want);
}

}  // namespace

TEST_CASE("charges give what whole bills give, at any price level") {
  int under_minimum = 0;
  int with_blocks = 0;
  for (std::uint64_t seed = 1; seed <= 400; ++seed) {
    Chance chance(seed);
    const TariffLaw law = random_law(chance);
    const Home home = random_home(chance, law.band_prices.size());
    ChargeReckoner charges(home.periods);
    charges.settle(law, home.household);
    std::vector<double> with;
    charges.charge_with(home.kwh, with);
    for (const double factor : {1.0, 0.0, 0.3, 0.999, 1.7, 12.0}) {
      const double want = whole_cost(scale_prices(law, factor), home);
      CHECK_MESSAGE(agree(charges.cost(with, factor), want), "seed ", seed, " factor ", factor,
                    ": ", charges.cost(with, factor), " for ", want);
    }
    under_minimum += law.minimum_per_month ? 1 : 0;
    with_blocks += law.ladders[0].size() > 1 ? 1 : 0;
  }
  CHECK(under_minimum > 100);
  CHECK(with_blocks > 80);
}

TEST_CASE("one charge reckoner serves contract after contract and home after home") {
  Chance chance(77);
  TariffLaw law = random_law(chance);
  const Home home = random_home(chance, law.band_prices.size());
  ChargeReckoner charges(home.periods);
  std::vector<double> with;
  std::vector<Energy> household = home.household;
  for (int turn = 0; turn < 6; ++turn) {
    for (Energy& energy : household) energy = energy * 0.7 + kilowatt_hours(turn);
    law.tax += 0.01;
    law.standing_per_month += money(1);
    law.minimum_per_month = turn % 2 == 0 ? std::optional(money(20.0 * turn)) : std::nullopt;
    for (UnitPrice& price : law.band_prices) price = price * 1.1;
    charges.settle(law, household);
    charges.charge_with(home.kwh, with);
    Home now = home;
    now.household = household;
    CHECK(agree(charges.cost(with, 1), whole_cost(law, now)));
    CHECK(agree(charges.cost(with, 2), whole_cost(scale_prices(law, 2), now)));
  }
}

TEST_CASE("a minimum that both bills stay below makes a candidate cost nothing, exactly") {
  TariffLaw law;
  law.band_prices = {per_kilowatt_hour(0.1)};
  law.standing_per_day = money(0.1);
  law.minimum_per_month = money(40);
  const std::vector<BillingPeriod> periods = {{0, 31, {hours(744)}}, {1, 28, {hours(672)}}};
  const std::vector<Energy> household = {kilowatt_hours(33.3), kilowatt_hours(100.1)};
  ChargeReckoner charges(periods);
  charges.settle(law, household);
  std::vector<double> with;
  charges.charge_with(Eigen::Vector2d(7.7, 3.1), with);
  CHECK(charges.cost(with, 1) == 0.0);
  CHECK(charges.cost(with, 2) == 0.0);
  // At a hundred times the price both are above it: 100 x 0.1 x 10.8 kWh, and the minimum is out.
  CHECK(agree(charges.cost(with, 100), 108));
}
