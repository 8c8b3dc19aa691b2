// What a candidate costs is the bill with it less the bill without it.

#include <doctest/doctest.h>

#include "../support/about.hpp"
#include "wattweek/billing/cost.hpp"

using namespace wattweek;
using namespace wattweek::billing;
using namespace wattweek::units;
using tests::exactly;

namespace {

Step step(double up_to_kwh, double price) {
  return {kilowatt_hours(up_to_kwh), per_kilowatt_hour(price)};
}
Step rest(double price) { return {std::nullopt, per_kilowatt_hour(price)}; }

TariffLaw two_bands() {
  TariffLaw law;
  law.band_prices = {per_kilowatt_hour(0.10), per_kilowatt_hour(0.40)};
  law.tax = 0.20;
  return law;
}

// One month of 30 days, 8 of 24 hours in the first band.
HouseholdBills household(const TariffLaw& law, double own_kwh) {
  return household_bills(law, {{0, 30, {hours(240), hours(480)}}}, {kilowatt_hours(own_kwh)});
}

// Energies of base and one workload (columns) in the two bands (rows).
Eigen::MatrixXd box(double base_low, double base_high, double films_low, double films_high) {
  Eigen::MatrixXd kwh(2, 2);
  kwh << base_low, films_low, base_high, films_high;
  return kwh;
}

}  // namespace

TEST_CASE("the household's own energy lies in the bands in proportion to their hours") {
  const HouseholdBills bills = household(two_bands(), 300);
  CHECK(in_kilowatt_hours(bills.bills[0].bands[0].energy) == exactly(100));
  CHECK(in_currency(bills.bills[0].total) == exactly((100 * 0.10 + 200 * 0.40) * 1.2));
}

TEST_CASE("a candidate's kWh are priced where they fall and not at the average price") {
  const CandidateCost cost = candidate_cost(household(two_bands(), 300), box(10, 0, 0, 5));
  CHECK(in_currency(cost.cost) == exactly((10 * 0.10 + 5 * 0.40) * 1.2));
  CHECK(in_currency(cost.by_cause[0]) == exactly(1.2));
  CHECK(in_currency(cost.by_cause[1]) == exactly(2.4));
  CHECK(in_currency(cost.by_band[1]) == exactly(2.4));
}

TEST_CASE("a standing charge is paid with and without a candidate, so it costs nothing") {
  TariffLaw law = two_bands();
  law.standing_per_day = money(0.5);
  CHECK(in_currency(candidate_cost(household(law, 300), box(0, 0, 0, 0)).cost) == 0);
}

TEST_CASE("a box on top of the household climbs the ladder where the household left it") {
  TariffLaw law = two_bands();
  law.ladders.fill({step(310, 0.05), rest(0.25)});
  const CandidateCost cost = candidate_cost(household(law, 300), box(10, 0, 20, 0));
  CHECK(in_currency(cost.blocks_cost) == exactly((10 * 0.05 + 20 * 0.25) * 1.2));
  // Shared by energy: a third to the base, two thirds to the workload.
  CHECK(in_currency(cost.by_cause[0]) == exactly((10 * 0.10 + 5.5 / 3) * 1.2));
  CHECK(in_currency(cost.by_cause[1]) == exactly((20 * 0.10 + 5.5 * 2 / 3) * 1.2));
}

TEST_CASE("below the minimum bill a box costs nothing, and nobody is charged for it") {
  TariffLaw law = two_bands();
  law.minimum_per_month = money(200);
  const CandidateCost cost = candidate_cost(household(law, 300), box(10, 0, 0, 5));
  CHECK(in_currency(cost.cost) == exactly(0));
  CHECK(in_currency(cost.minimum_cost) == exactly(-(10 * 0.10 + 5 * 0.40) * 1.2));
  CHECK(in_currency(cost.by_cause[0]) == exactly(1.2));
  CHECK(in_currency(cost.bills[0].minimum_top_up) == exactly(200 - 93));
  CHECK(in_currency(cost.bills[0].tax) == exactly(40));
  CHECK(in_currency(cost.bills[0].total) == exactly(240));
}

TEST_CASE("without a minimum a bill may be negative") {
  TariffLaw law = two_bands();
  law.band_prices = {per_kilowatt_hour(-0.30), per_kilowatt_hour(-0.10)};
  CHECK(in_currency(household(law, 300).bills[0].total) == exactly(-(30 + 20) * 1.2));
}

TEST_CASE("tax widens a range of prices, and makes a negative one more negative") {
  const auto with = with_tax<double>({-0.10, 0.30}, {0.1, 0.2});
  CHECK(with.low == exactly(-0.12));
  CHECK(with.high == exactly(0.36));
  const model::MoneyRange standing = with_tax<Money>(money(10), 0.09);
  CHECK(in_currency(standing.low) == exactly(10.9));
  CHECK(standing.is_exact());
}
