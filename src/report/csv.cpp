#include <fmt/format.h>

#include <optional>

#include "csv_parts.hpp"
#include "numbers.hpp"
#include "sums.hpp"
#include "wattweek/report/report.hpp"

namespace wattweek::report {
namespace {

void add_result(CsvRow& row, const model::Study& study, const decide::CandidateResult& result) {
  const auto money = [](units::Money amount) { return exact(units::in_currency(amount)); };
  row.push_back({"months", fmt::format("{}", study.months)});
  row.push_back({"energy_kwh", exact(units::in_kilowatt_hours(result.energy))});
  row.push_back({"mean_w", exact(units::in_watts(result.mean))});
  row.push_back({"highest_w", exact(result.ledger.highest_w)});
  row.push_back({"base_kwh", exact(cause_kwh(result, 0))});
  row.push_back({"currency", csv_words(study.tariff.currency)});
  row.push_back({"cost", money(result.cost.cost)});
  row.push_back({"base_cost", money(result.cost.by_cause[0])});
  row.push_back({"blocks_cost", money(result.cost.blocks_cost)});
  row.push_back({"minimum_cost", money(result.cost.minimum_cost)});
  row.push_back({"co2_kg", csv_figure(result.co2_kg)});
  row.push_back({"lower_bound", result.lower_bound ? "true" : "false"});
}

void add_lifetime(CsvRow& row, const model::Candidate& candidate,
                  const std::optional<decide::Lifetime>& lifetime) {
  row.push_back({"purchase", exact(units::in_currency(candidate.purchase.central()))});
  row.push_back({"years", lifetime ? fmt::format("{}", lifetime->years) : ""});
  row.push_back({"total", lifetime ? exact(lifetime->total) : ""});
  row.push_back({"present_cost", lifetime ? exact(lifetime->present_cost) : ""});
}

/// The baseline's own row has nothing to compare.
void add_comparison(CsvRow& row, const model::Study& study, const decide::Assessment& all,
                    std::size_t c) {
  const decide::ComparisonRow* against = nullptr;
  for (const decide::ComparisonRow& each : all.rows) {
    if (each.candidate == c) against = &each;
  }
  const auto add = [&](const char* header, const auto& value_of) {
    row.push_back({header, against != nullptr ? csv_figure(value_of(*against)) : ""});
  };
  using Row = decide::ComparisonRow;
  row.push_back({"baseline", csv_words(study.candidates[all.baseline].id)});
  add("saves_kwh_a_year", [](const Row& r) { return r.saves_kwh; });
  add("saves_cost_a_year", [](const Row& r) { return r.saves_cost; });
  add("extra_purchase", [](const Row& r) { return r.extra_purchase; });
  add("payback_years", [](const Row& r) { return r.payback_years; });
  add("overtaken_years", [](const Row& r) { return r.overtaken_years; });
  add("discounted_payback_years", [](const Row& r) { return r.discounted_payback_years; });
  add("saves_present_cost", [](const Row& r) { return r.saves_present_cost; });
  add("break_even_price_factor", [](const Row& r) { return r.break_even_price_factor; });
}

CsvRow row_of(const model::Study& study, const decide::Assessment& all, Scope scope,
              std::size_t c) {
  const model::Candidate& candidate = study.candidates[c];
  CsvRow row{{"id", csv_words(candidate.id)}, {"name", csv_words(candidate.name)}};
  add_result(row, study, all.candidates[c]);
  add_lifetime(row, candidate, all.candidates[c].lifetime);
  if (scope == Scope::compare) add_comparison(row, study, all, c);
  row.push_back({"notes", csv_words(csv_notes(candidate.id, all.notes))});
  return row;
}

}  // namespace

std::string csv(const model::Study& study, const decide::Assessment& all, Scope scope) {
  std::vector<CsvRow> rows;
  for (std::size_t c = 0; c < study.candidates.size(); ++c) {
    rows.push_back(row_of(study, all, scope, c));
  }
  return csv_text(rows);
}

}  // namespace wattweek::report
