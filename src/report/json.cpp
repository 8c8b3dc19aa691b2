#include <array>

#include "json_parts.hpp"
#include "sums.hpp"
#include "wattweek/report/report.hpp"

namespace wattweek::report {
namespace {

Json months_part(const decide::Assessment& all, const decide::CandidateResult& result) {
  Json months = Json::array();
  for (std::size_t m = 0; m < all.months.size(); ++m) {
    months.push_back({{"month", calendar::to_text(all.months[m].month)},
                      {"hours", number(all.months[m].hours())},
                      {"energy_kwh", number(month_kwh(all, result, m))},
                      {"cost", number(result.cost.by_period[m])}});
  }
  return months;
}

Json bands_part(const model::Study& study, const decide::Assessment& all,
                const decide::CandidateResult& result) {
  Json bands = Json::array();
  for (std::size_t b = 0; b < study.tariff.bands.size(); ++b) {
    bands.push_back({{"name", study.tariff.bands[b].name},
                     {"hours", number(all.band_hours[b])},
                     {"energy_kwh", number(band_kwh(all, result, b))},
                     {"cost", number(result.cost.by_band[b])}});
  }
  return bands;
}

Json states_part(const energy::Ledger& ledger) {
  static constexpr std::array<const char*, energy::kStates> kNames = {"off", "sleep", "idle",
                                                                      "active"};
  Json states = Json::array();
  for (std::size_t s = 0; s < energy::kStates; ++s) {
    states.push_back({{"state", kNames[s]},
                      {"hours", number(ledger.states[s].device_hours)},
                      {"energy_kwh", number(ledger.states[s].energy_kwh)}});
  }
  return states;
}

Json workloads_part(const model::Study& study, const decide::CandidateResult& result) {
  Json workloads = Json::array();
  for (std::size_t w = 0; w < study.workloads.size(); ++w) {
    workloads.push_back({{"id", study.workloads[w].id},
                         {"unit_hours", number(result.ledger.unit_hours[w].served)},
                         {"unserved_unit_hours", number(result.ledger.unit_hours[w].unserved)},
                         {"energy_kwh", number(cause_kwh(result, 1 + w))},
                         {"cost", number(result.cost.by_cause[1 + w])}});
  }
  return workloads;
}

Json devices_part(const model::Candidate& candidate, const decide::Assessment& all,
                  const decide::CandidateResult& result) {
  Json devices = Json::array();
  for (std::size_t d = 0; d < candidate.devices.size(); ++d) {
    const energy::DeviceTotal& total = result.ledger.devices[d];
    devices.push_back({{"name", candidate.devices[d].name},
                       {"count", candidate.devices[d].count},
                       {"energy_kwh", number(total.energy_kwh)},
                       {"mean_w", number(device_mean_w(all, total))},
                       {"highest_w", number(total.highest_w)},
                       {"overload_hours", number(total.overload_hours)}});
  }
  return devices;
}

Json lifetime_part(const std::optional<decide::Lifetime>& lifetime) {
  if (!lifetime) return {};
  return {{"years", lifetime->years},
          {"purchase", number(lifetime->purchase)},
          {"energy_cost", number(lifetime->energy_cost)},
          {"later_cost", number(lifetime->later_cost)},
          {"resale", number(lifetime->resale)},
          {"total", number(lifetime->total)},
          {"present_cost", number(lifetime->present_cost)}};
}

Json candidate_part(const model::Study& study, const decide::Assessment& all, std::size_t c) {
  const model::Candidate& candidate = study.candidates[c];
  const decide::CandidateResult& result = all.candidates[c];
  Json part = {{"id", candidate.id},
               {"name", candidate.name},
               {"energy_kwh", number(result.energy)},
               {"mean_w", number(units::in_watts(result.mean))},
               {"highest_w", number(result.ledger.highest_w)},
               {"cost", number(result.cost.cost)},
               {"blocks_cost", number(result.cost.blocks_cost)},
               {"minimum_cost", number(result.cost.minimum_cost)},
               {"co2_kg", number(result.co2_kg)},
               {"lower_bound", result.lower_bound}};
  part["months"] = months_part(all, result);
  part["bands"] = bands_part(study, all, result);
  part["states"] = states_part(result.ledger);
  part["workloads"] = workloads_part(study, result);
  part["base"] = {{"energy_kwh", number(cause_kwh(result, 0))},
                  {"cost", number(result.cost.by_cause[0])}};
  part["devices"] = devices_part(candidate, all, result);
  part["lifetime"] = lifetime_part(result.lifetime);
  return part;
}

Json bill_part(const model::Study& study, const calendar::Month& month, const billing::Bill& bill) {
  Json bands = Json::array();
  for (std::size_t b = 0; b < study.tariff.bands.size(); ++b) {
    bands.push_back({{"name", study.tariff.bands[b].name},
                     {"kwh", number(bill.bands[b].energy)},
                     {"amount", number(bill.bands[b].amount)}});
  }
  return {{"month", calendar::to_text(month.month)},
          {"kwh", number(bill.energy)},
          {"standing", number(bill.standing)},
          {"bands", bands},
          {"blocks", number(bill.blocks)},
          {"minimum_top_up", number(bill.minimum_top_up)},
          {"tax", number(bill.tax)},
          {"total", number(bill.total)}};
}

Json year_of_bills(const model::Study& study, const decide::Assessment& all,
                   const std::vector<billing::Bill>& bills) {
  Json year = Json::array();
  for (std::size_t m = 0; m < bills.size(); ++m) {
    year.push_back(bill_part(study, all.months[m], bills[m]));
  }
  return year;
}

Json bills_part(const model::Study& study, const decide::Assessment& all) {
  Json with = Json::object();
  for (std::size_t c = 0; c < study.candidates.size(); ++c) {
    with[study.candidates[c].id] = year_of_bills(study, all, all.candidates[c].cost.bills);
  }
  return {{"without", year_of_bills(study, all, all.without.bills)}, {"with", with}};
}

Json comparison_part(const model::Study& study, const decide::Assessment& all) {
  Json rows = Json::array();
  for (const decide::ComparisonRow& row : all.rows) {
    rows.push_back({{"id", study.candidates[row.candidate].id},
                    {"saves_kwh", number(row.saves_kwh)},
                    {"saves_cost", number(row.saves_cost)},
                    {"extra_purchase", number(row.extra_purchase)},
                    {"payback_years", number(row.payback_years)},
                    {"overtaken_years", number(row.overtaken_years)},
                    {"discounted_payback_years", number(row.discounted_payback_years)},
                    {"saves_present_cost", number(row.saves_present_cost)},
                    {"break_even_price_factor", number(row.break_even_price_factor)}});
  }
  return {{"baseline", study.candidates[all.baseline].id}, {"rows", rows}};
}

Json targets_part(const model::Study& study, const decide::PaybackTargets& targets) {
  Json rows = Json::array();
  for (const decide::PaybackTarget& target : targets.rows) {
    rows.push_back({{"id", study.candidates[target.candidate].id},
                    {"purchase", number(target.purchase)},
                    {"discounted_purchase", number(target.discounted_purchase)}});
  }
  return {{"payback_within", targets.within_years}, {"rows", rows}};
}

Json spread_part(const decide::Spread& spread) {
  return {{"mean", number(spread.mean)},
          {"sd", number(spread.sd)},
          {"p2_5", number(spread.p2_5)},
          {"p50", number(spread.p50)},
          {"p97_5", number(spread.p97_5)}};
}

Json uncertainty_part(const model::Study& study, const decide::Uncertainty& uncertainty) {
  Json candidates = Json::array();
  for (std::size_t c = 0; c < uncertainty.candidates.size(); ++c) {
    const decide::CandidateDoubt& doubt = uncertainty.candidates[c];
    candidates.push_back(
        {{"id", study.candidates[c].id},
         {"cheapest", number(doubt.cheapest)},
         {"energy_kwh", spread_part(doubt.energy_kwh)},
         {"cost", spread_part(doubt.cost)},
         {"present_cost", doubt.present_cost ? spread_part(*doubt.present_cost) : Json()}});
  }
  Json drivers = Json::array();
  for (const decide::Driver& driver : uncertainty.drivers) {
    drivers.push_back({{"key", driver.key}, {"share", number(driver.share)}});
  }
  return {{"draws", uncertainty.draws},
          {"seed", uncertainty.seed},
          {"candidates", candidates},
          {"drivers", drivers},
          {"explained", number(uncertainty.explained)}};
}

}  // namespace

std::string json(const model::Study& study, const decide::Assessment& all, Scope scope) {
  Json whole = {{"format", "wattweek-estimate-1"},
                {"study", study_part(study, all)},
                {"tariff", {{"name", study.tariff.name}, {"currency", study.tariff.currency}}}};
  Json& candidates = whole["candidates"] = Json::array();
  for (std::size_t c = 0; c < study.candidates.size(); ++c) {
    candidates.push_back(candidate_part(study, all, c));
  }
  whole["bills"] = bills_part(study, all);
  whole["notes"] = notes_part(all.notes);
  if (scope == Scope::compare) whole["comparison"] = comparison_part(study, all);
  if (all.targets) whole["targets"] = targets_part(study, *all.targets);
  if (all.uncertainty) whole["uncertainty"] = uncertainty_part(study, *all.uncertainty);
  return json_text(whole);
}

std::string quick_json(const decide::QuickResult& result, const std::string& currency) {
  return json_text({{"format", "wattweek-quick-1"},
                    {"energy_kwh", number(result.energy_kwh)},
                    {"mean_w", number(result.mean_w)},
                    {"cost", number(result.cost)},
                    {"currency", currency.empty() ? Json() : Json(currency)}});
}

}  // namespace wattweek::report
