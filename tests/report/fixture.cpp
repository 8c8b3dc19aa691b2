#include "fixture.hpp"

#include <memory>

namespace wattweek::report {

model::Candidate candidate(const std::string& id, const std::string& name, double purchase) {
  model::Candidate made;
  made.id = id;
  made.name = name;
  made.purchase = units::money(purchase);
  model::Device device;
  device.name = "device of " + id;
  made.devices.push_back(device);
  return made;
}

model::Study study() {
  model::Study made;
  made.title = "Hall cupboard";
  made.time_zone = "Europe/Dublin";
  made.start = std::chrono::year(2027) / std::chrono::January;
  made.months = 12;
  made.tariff.name = "Day and night";
  made.tariff.currency = "EUR";
  made.tariff.bands.resize(2);
  made.tariff.bands[0].name = "night";
  made.tariff.bands[1].name = "day";
  made.tariff.bands[0].price = units::per_kilowatt_hour(0.15);
  made.tariff.bands[1].price = units::per_kilowatt_hour(0.3);
  made.tariff.tax = 0.2;
  made.workloads.resize(1);
  made.workloads[0].id = "film";
  made.workloads[0].name = "Film streaming";
  made.workloads[0].unit = "stream";
  made.candidates = {candidate("rack", "Rack server", 0), candidate("palm", "Palm-size box", 300)};
  return made;
}

billing::Bill bill(double kwh) {
  billing::Bill made;
  made.energy = units::kilowatt_hours(kwh);
  made.standing = units::money(10);
  made.bands = {{units::kilowatt_hours(kwh / 4), units::money(kwh / 40)},
                {units::kilowatt_hours(kwh * 3 / 4), units::money(kwh * 3 / 10)}};
  made.blocks = units::money(1.5);
  made.minimum_top_up = units::money(0.25);
  made.tax = units::money(2);
  made.total = units::money(13.75 + kwh * 13 / 40);
  return made;
}

decide::CandidateResult result(double base, double film, double cost) {
  decide::CandidateResult made;
  made.ledger.kwh.resize(4, 2);
  made.ledger.kwh.col(0).setConstant(base);
  made.ledger.kwh.col(1).setConstant(film);
  made.ledger.states[2] = {8000, 4 * base};
  made.ledger.states[3] = {760, 4 * film};
  made.ledger.unit_hours = {{760, 12}};
  made.ledger.devices = {{4 * (base + film), 60, 0}};
  made.ledger.highest_w = 60;
  made.energy = units::kilowatt_hours(4 * (base + film));
  made.mean = units::watts(4 * (base + film) / 8.76);
  made.cost.cost = units::money(cost);
  made.cost.by_period = {units::money(cost / 2), units::money(cost / 2)};
  made.cost.by_band = {units::money(cost / 4), units::money(cost * 3 / 4)};
  made.cost.by_cause = {units::money(cost * 0.9), units::money(cost * 0.1)};
  made.cost.bills = {bill(100), bill(200)};
  return made;
}

decide::Assessment assessment() {
  using std::chrono::January, std::chrono::February, std::chrono::year;
  const calendar::Instant start{};
  decide::Assessment made;
  made.months = {{year(2027) / January, 31, start, start + std::chrono::hours(744)},
                 {year(2027) / February, 28, start, start + std::chrono::hours(672)}};
  made.days = 365;
  made.hours = 8760;
  made.band_hours = {3285, 5475};
  made.without.law.tax = 0.2;
  made.without.law.band_prices = {units::per_kilowatt_hour(0.15), units::per_kilowatt_hour(0.3)};
  for (const double hours : {744.0, 672.0}) {
    billing::BillingPeriod period;
    period.days = hours / 24;
    period.band_hours = {units::hours(hours / 4), units::hours(hours * 3 / 4)};
    made.without.periods.push_back(period);
  }
  made.without.periods[1].month = 1;
  made.without.household = {units::kilowatt_hours(50), units::kilowatt_hours(60)};
  made.without.bills = {bill(50), bill(60)};
  made.candidates = {result(200, 50, 300), result(20, 5, 30)};
  decide::ComparisonRow row;
  row.candidate = 1;
  row.saves_kwh = 900;
  row.saves_cost = 270;
  row.extra_purchase = 300;
  row.payback_years = 300.0 / 270;
  made.rows = {row};
  return made;
}

decide::Note note(const std::string& code, const std::string& where, const std::string& text) {
  return {code, where, text};
}

decide::Note placed_note(const std::string& code, const std::string& text) {
  return {code, diag::Place{std::make_shared<const std::string>("study.toml"), 7, 3}, text};
}

decide::Assessment with_horizon() {
  decide::Assessment made = assessment();
  made.candidates[0].lifetime = {5, 0, 1500, 0, 0, 1500, 1400};
  made.candidates[1].lifetime = {5, 300, 150, 20, 40, 430, 420};
  made.rows[0].discounted_payback_years = 1.25;
  made.rows[0].saves_present_cost = 980;
  made.rows[0].break_even_price_factor = 0.222;
  return made;
}

}  // namespace wattweek::report
