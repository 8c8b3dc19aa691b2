// Bills that others have printed. The bill room is fed directly, since their periods are not
// always calendar months, and rounds nothing; where a source rounds, the check says how.

#include <doctest/doctest.h>

#include <cmath>

#include "../support/about.hpp"
#include "wattweek/billing/bill.hpp"

using namespace wattweek;
using namespace wattweek::billing;
using namespace wattweek::units;
using tests::about;
using tests::exactly;
using tests::printed;

namespace {

TariffLaw one_band(double price) {
  TariffLaw law;
  law.band_prices = {per_kilowatt_hour(price)};
  return law;
}

Step step(double up_to_kwh, double price) {
  return {kilowatt_hours(up_to_kwh), per_kilowatt_hour(price)};
}
Step rest(double price) { return {std::nullopt, per_kilowatt_hour(price)}; }

TariffLaw with_blocks(double band_price, const Ladder& ladder) {
  TariffLaw law = one_band(band_price);
  law.ladders.fill(ladder);
  return law;
}

Bill bill_for(const TariffLaw& law, double kwh, double days = 30) {
  return bill(law, {0, days, {hours(24 * days)}}, kilowatt_hours(kwh), {Energy{}});
}

double total(const Bill& b) { return in_currency(b.total); }

}  // namespace

TEST_CASE("F1: a price cap is a price per kWh and a charge per day") {
  // Source: Ofgem, price cap 1 October to 31 December 2024: electricity 24.50 p/kWh and 60.99 p a
  // day, gas 6.24 and 31.66, 2,700 and 11,500 kWh, 365 days; printed 1,717 GBP a year, VAT
  // included. From rounded rates headlines can be off by one pound.
  TariffLaw electricity = one_band(0.2450);
  electricity.standing_per_day = money(0.6099);
  TariffLaw gas = one_band(0.0624);
  gas.standing_per_day = money(0.3166);
  const double e = total(bill_for(electricity, 2700, 365));
  const double g = total(bill_for(gas, 11500, 365));
  CHECK(e == about(884.1135));
  CHECK(g == about(833.1590));
  CHECK(e + g == printed(1717, 0));
}

TEST_CASE("F7: tax is due on the standing charge too") {
  // Source: BBC Bitesize "Utility bills": 1,800 units x 4 p, standing charge 10 GBP, VAT 5 % on
  // both: 72.00, VAT 4.10, total 86.10 GBP.
  TariffLaw law = one_band(0.04);
  law.standing_per_month = money(10);
  law.tax = 0.05;
  const Bill b = bill_for(law, 1800);
  CHECK(in_currency(b.bands[0].amount) == exactly(72.00));
  CHECK(in_currency(b.tax) == exactly(4.10));
  CHECK(total(b) == exactly(86.10));
}

TEST_CASE("F8: a meter difference is priced and taxed, and rounded once at the end") {
  // Source: wtmaths.com/utillity_bills.html: 5545 - 5066 = 479 units x 15.4 p, VAT 5 %: 77.45 GBP
  // (7745.430 p).
  TariffLaw law = one_band(0.154);
  law.tax = 0.05;
  CHECK(total(bill_for(law, 5545 - 5066)) == exactly(77.4543));
  CHECK(total(bill_for(law, 5545 - 5066)) == printed(77.45, 2));
}

TEST_CASE("B1: declining blocks on top of an adder on all kWh") {
  // Source: City of Seymour, residential bill comparison: first 250 at .064, next 450 at .049, rest
  // at .0446 (summer: next 550 at .0475, rest .0446), power cost .085 on all, customer charge 7.50,
  // tax 1 %. Printed: winter 1,200 kWh 171.55; summer 2,000 kWh 277.88 USD, each line rounded half
  // up to the cent; unrounded 171.5485 and 277.87625.
  TariffLaw winter = with_blocks(0.085, {step(250, 0.064), step(700, 0.049), rest(0.0446)});
  winter.standing_per_month = money(7.50);
  winter.tax = 0.01;
  CHECK(total(bill_for(winter, 1200)) == exactly(171.5485));
  CHECK(total(bill_for(winter, 1200)) == printed(171.55, 2));

  TariffLaw summer = winter;
  summer.ladders.fill({step(250, 0.064), step(700, 0.049), step(1250, 0.0475), rest(0.0446)});
  const Bill b = bill_for(summer, 2000);
  CHECK(in_currency(b.blocks) == exactly(16.00 + 22.05 + 26.125 + 33.45));
  CHECK(total(b) == exactly(277.87625));
  CHECK(total(b) == printed(277.88, 2));
}

TEST_CASE("B2: rising blocks, a capacity charge and two levies on every kWh") {
  // Source: Erongo RED, how an account is calculated: 850 kWh: 250 x 1.56, 500 x 1.68, 100 x 2.06,
  // 40 A x 8.00, levies 0.0150 and 0.0108 per kWh. Printed N$ 1,777.93, exact.
  TariffLaw law = with_blocks(0.0150 + 0.0108, {step(250, 1.56), step(750, 1.68), rest(2.06)});
  law.standing_per_month = money(40 * 8.00);
  CHECK(total(bill_for(law, 34029 - 33179)) == exactly(1777.93));
}

TEST_CASE("B3: three tiers of a residential energy charge") {
  // Source: Idaho residential energy charge, non-summer: 0-800 / 801-2,000 / over 2,000 kWh at
  // 8.8958 / 9.8073 / 10.8615 cents. Printed 71.17, 95.69 and 213.30 USD; the source rounds each
  // tier, unrounded 71.1664, 95.68465 and 213.292375.
  const TariffLaw law = with_blocks(0, {step(800, 0.088958), step(2000, 0.098073), rest(0.108615)});
  CHECK(total(bill_for(law, 800)) == printed(71.17, 2));
  CHECK(total(bill_for(law, 1050)) == exactly(95.68465));
  CHECK(std::abs(total(bill_for(law, 1050)) - 95.69) < 2 * 0.005 + 1e-9);
  CHECK(total(bill_for(law, 2225)) == exactly(213.292375));
  CHECK(std::abs(total(bill_for(law, 2225)) - 213.30) < 3 * 0.005 + 1e-9);
}

TEST_CASE("B6: a limit of 40 kWh a day is 2,480 kWh in 62 days, judged on the whole period") {
  // Source: Hydro-Quebec Rate D: 40 kWh a day x days of the period; printed 62 days -> 2,480 kWh.
  TariffLaw law = with_blocks(0, {step(40, 1), rest(2)});
  law.blocks_per = model::BlocksPer::day;
  CHECK(total(bill_for(law, 2480, 62)) == exactly(2480));
  CHECK(total(bill_for(law, 2481, 62)) == exactly(2482));

  // Same source, rates of 1 April 2015: 40.64 cents a day, 30 kWh a day at 5.68 cents, rest 8.60;
  // 62 days and 3,000 kWh derived as 228.8848 before taxes.
  TariffLaw rate_d = with_blocks(0, {step(30, 0.0568), rest(0.0860)});
  rate_d.standing_per_day = money(0.4064);
  rate_d.blocks_per = model::BlocksPer::day;
  CHECK(total(bill_for(rate_d, 3000, 62)) == exactly(228.8848));
}

TEST_CASE("a dearer second block does not make the first one dearer") {
  // Common practice, no source: 1,000 kWh at 8 and 1,000 at 10 cents are 180 USD; the price of the
  // last kWh on all of them would be 200.
  const TariffLaw law = with_blocks(0, {step(1000, 0.08), rest(0.10)});
  CHECK(total(bill_for(law, 2000)) == exactly(180));
}

TEST_CASE("a negative adjustment on every kWh is a legal line") {
  // Source: energy-management handbook, section 18.5.1 (convenience store): 17,588 kWh, customer
  // charge 3.74, energy .09444, fuel adjustment -.017192, demand 262.34; printed 1,624.72.
  TariffLaw law = one_band(0.09444 - 0.017192);
  law.standing_per_month = money(3.74 + 262.34);
  CHECK(total(bill_for(law, 17588)) == printed(1624.72, 2));
}
