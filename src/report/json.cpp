// The one file that knows the JSON library.

#include <fmt/format.h>

#include <array>
#include <nlohmann/json.hpp>
#include <optional>

#include "sums.hpp"
#include "wattweek/report/report.hpp"

namespace wattweek::report {
namespace {

using Json = nlohmann::ordered_json;

/// Full precision; -0 is 0.
Json number(double value) { return value == 0 ? 0.0 : value; }
Json number(units::Energy energy) { return number(units::in_kilowatt_hours(energy)); }
Json number(units::Money money) { return number(units::in_currency(money)); }
Json number(const std::optional<double>& value) { return value ? number(*value) : Json(); }

Json study_part(const model::Study& study, const decide::Assessment& all) {
  return {{"title", study.title},
          {"time_zone", study.time_zone},
          {"start", calendar::to_text(study.start) + "-01"},
          {"months", study.months},
          {"days", all.days},
          {"hours", number(all.hours)}};
}

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

Json notes_part(const std::vector<decide::Note>& notes) {
  Json part = Json::array();
  for (const decide::Note& note : notes) {
    part.push_back({{"code", note.code}, {"where", where_text(note)}, {"text", note.text}});
  }
  return part;
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

/// Bytes that are no UTF-8 (a file's name can hold some) become U+FFFD. The library escapes the
/// controls below U+0020; DEL and U+0080 to U+009F, which can only stand inside strings, are
/// escaped here, so that showing JSON on a terminal does nothing but show it.
std::string to_text(const Json& json) {
  const std::string raw = json.dump(2, ' ', false, Json::error_handler_t::replace);
  std::string text;
  text.reserve(raw.size() + 1);
  for (std::size_t i = 0; i < raw.size(); ++i) {
    const auto byte = static_cast<unsigned char>(raw[i]);
    const auto next = i + 1 < raw.size() ? static_cast<unsigned char>(raw[i + 1]) : 0U;
    if (byte == 0x7F) {
      text += "\\u007f";
    } else if (byte == 0xC2 && next < 0xA0) {
      text += fmt::format("\\u{:04x}", next);
      ++i;
    } else {
      text += raw[i];
    }
  }
  return text += '\n';
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
  return to_text(whole);
}

std::string quick_json(const decide::QuickResult& result, const std::string& currency) {
  return to_text({{"format", "wattweek-quick-1"},
                  {"energy_kwh", number(result.energy_kwh)},
                  {"mean_w", number(result.mean_w)},
                  {"cost", number(result.cost)},
                  {"currency", currency.empty() ? Json() : Json(currency)}});
}

}  // namespace wattweek::report
