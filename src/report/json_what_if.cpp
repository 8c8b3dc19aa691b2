#include "json_parts.hpp"
#include "wattweek/report/what_if.hpp"

namespace wattweek::report {
namespace {

/// The horizon that every best is over; null without one.
Json years(const WhatIfShown& shown) {
  const auto& lifetime = shown.assessment.candidates.front().lifetime;
  return lifetime ? Json(lifetime->years) : Json();
}

Json factors(const WhatIfShown& shown) {
  Json names = Json::array();
  for (const decide::Sweep& sweep : shown.sweeps)
    names.push_back(name_of(shown.study, sweep.factor));
  return names;
}

Json row_part(const WhatIfShown& shown, const decide::Rows& rows, std::size_t row) {
  Json at = Json::array();
  for (const double value : decide::values_in_row(shown.sweeps, rows.first + row)) {
    at.push_back(number(value));
  }
  const std::vector<model::Candidate>& all = shown.study.candidates;
  const bool has_horizon = shown.assessment.candidates.front().lifetime.has_value();
  Json candidates = Json::array();
  for (std::size_t c = 0; c < all.size(); ++c) {
    const decide::Totals& totals = rows.totals[row * all.size() + c];
    candidates.push_back({{"id", all[c].id},
                          {"energy_kwh", number(totals.energy_kwh)},
                          {"cost", number(totals.cost)},
                          {"present_cost", has_horizon ? number(totals.present_cost) : Json()}});
  }
  return {{"at", at}, {"best", all[rows.best[row]].id}, {"candidates", candidates}};
}

/// Without its line end.
std::string on_one_line(const Json& json) {
  std::string text = json_text(json, -1);
  text.pop_back();
  return text;
}

}  // namespace

std::string what_if_json_begin(const WhatIfShown& shown) {
  return "{\n  \"format\": \"wattweek-whatif-1\",\n  \"factors\": " + on_one_line(factors(shown)) +
         ",\n  \"years\": " + on_one_line(years(shown)) + ",\n  \"rows\": [";
}

std::string what_if_json(const WhatIfShown& shown, const decide::Rows& rows) {
  std::string text;
  for (std::size_t row = 0; row < rows.best.size(); ++row) {
    text += rows.first + row == 0 ? "\n    " : ",\n    ";
    text += on_one_line(row_part(shown, rows, row));
  }
  return text;
}

std::string what_if_json_end(const WhatIfShown& shown,
                             const std::vector<decide::Crossing>& crossings) {
  std::string text = "\n  ],\n  \"crossings\": [";
  for (std::size_t i = 0; i < crossings.size(); ++i) {
    const decide::Crossing& crossing = crossings[i];
    text += i == 0 ? "\n    " : ",\n    ";
    text += on_one_line(
        {{"factor", name_of(shown.study, shown.sweeps.front().factor)},
         {"between",
          {shown.study.candidates[crossing.first].id, shown.study.candidates[crossing.second].id}},
         {"at", number(crossing.at)}});
  }
  return text + (crossings.empty() ? "]\n}\n" : "\n  ]\n}\n");
}

std::string turns_json(const WhatIfShown& shown, const decide::AllTurns& turns) {
  const auto turn_part = [&shown](const std::optional<decide::Turn>& turn) -> Json {
    if (!turn) return Json();
    return {{"at", number(turn->at)}, {"best", shown.study.candidates[turn->best].id}};
  };
  Json rows = Json::array();
  for (const decide::Turns& each : turns.turns) {
    rows.push_back({{"factor", name_of(shown.study, each.factor)},
                    {"below", turn_part(each.below)},
                    {"above", turn_part(each.above)}});
  }
  return json_text({{"format", "wattweek-turns-1"},
                    {"years", years(shown)},
                    {"best", shown.study.candidates[turns.best].id},
                    {"rows", rows}});
}

}  // namespace wattweek::report
