#include "json_parts.hpp"
#include "wattweek/report/report.hpp"

namespace wattweek::report {
namespace {

const char* word_for(const decide::Yardstick& yardstick) {
  if (yardstick.is_year_alone) return "year_cost";
  return yardstick.criterion == decide::Criterion::present_cost ? "present_cost" : "cost";
}

Json candidates_part(const decide::UnderTariff& under, bool has_horizon) {
  Json candidates = Json::array();
  for (std::size_t c = 0; c < under.study.candidates.size(); ++c) {
    const decide::CandidateResult& result = under.assessment.candidates[c];
    candidates.push_back(
        {{"id", under.study.candidates[c].id},
         {"energy_kwh", number(result.energy)},
         {"cost", number(result.cost.cost)},
         {"lower_bound", result.lower_bound},
         {"present_cost", has_horizon ? number(result.lifetime->present_cost) : Json()}});
  }
  return candidates;
}

}  // namespace

std::string tariffs_json(const std::vector<decide::UnderTariff>& all,
                         const decide::SeveralTariffs& several) {
  const decide::UnderTariff& first = all.front();
  Json whole = {{"format", "wattweek-tariffs-1"},
                {"study", study_part(first.study, first.assessment)},
                {"criterion", word_for(several.yardstick)},
                {"years", several.years ? Json(*several.years) : Json()}};
  Json& rows = whole["rows"] = Json::array();
  for (std::size_t t = 0; t < all.size(); ++t) {
    const decide::TariffRow& row = several.rows[t];
    rows.push_back({{"tariff", row.tariff},
                    {"currency", all[t].study.tariff.currency},
                    {"best", all[t].study.candidates[row.best].id},
                    {"candidates", candidates_part(all[t], several.years.has_value())},
                    {"notes", notes_part(all[t].assessment.notes)}});
  }
  return json_text(whole);
}

}  // namespace wattweek::report
