#include <fmt/format.h>

#include "csv_parts.hpp"
#include "numbers.hpp"
#include "wattweek/report/report.hpp"

namespace wattweek::report {
namespace {

CsvRow row_of(const decide::UnderTariff& under, const decide::TariffRow& row,
              const std::optional<int>& years, std::size_t c) {
  const model::Candidate& candidate = under.study.candidates[c];
  const decide::CandidateResult& result = under.assessment.candidates[c];
  return {{"tariff", csv_words(row.tariff)},
          {"currency", csv_words(under.study.tariff.currency)},
          {"id", csv_words(candidate.id)},
          {"name", csv_words(candidate.name)},
          {"months", fmt::format("{}", under.study.months)},
          {"energy_kwh", exact(units::in_kilowatt_hours(result.energy))},
          {"cost", exact(units::in_currency(result.cost.cost))},
          {"lower_bound", result.lower_bound ? "true" : "false"},
          {"years", years ? fmt::format("{}", *years) : ""},
          {"present_cost", years ? exact(result.lifetime->present_cost) : ""},
          {"best", c == row.best ? "true" : "false"},
          {"notes", csv_words(csv_notes(candidate.id, under.assessment.notes))}};
}

}  // namespace

std::string tariffs_csv(const std::vector<decide::UnderTariff>& all,
                        const decide::SeveralTariffs& several) {
  std::vector<CsvRow> rows;
  for (std::size_t t = 0; t < all.size(); ++t) {
    for (std::size_t c = 0; c < all[t].study.candidates.size(); ++c) {
      rows.push_back(row_of(all[t], several.rows[t], several.years, c));
    }
  }
  return csv_text(rows);
}

}  // namespace wattweek::report
