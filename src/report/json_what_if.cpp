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

/// Without its line end.
std::string on_one_line(const Json& json) {
  std::string text = json_text(json, -1);
  text.pop_back();
  return text;
}

/// Rows as `Json` would write them. There can be a million of them, and building each as a `Json`
/// first would take several times as long; only the numbers are left to the library.
class RowWriter {
 public:
  explicit RowWriter(const WhatIfShown& shown)
      : shown_(shown), has_horizon_(shown.assessment.candidates.front().lifetime.has_value()) {
    for (const model::Candidate& candidate : shown.study.candidates) {
      ids_.push_back(on_one_line(candidate.id));
    }
  }

  void add(const decide::Rows& rows, std::size_t row, std::string& text) const {
    text += R"({"at":)";
    char before = '[';
    for (const double value : decide::values_in_row(shown_.sweeps, rows.first + row)) {
      text += before + number(value).dump();
      before = ',';
    }
    text += R"(],"best":)" + ids_[rows.best[row]] + R"(,"candidates":)";
    for (std::size_t c = 0; c < ids_.size(); ++c) {
      text += c == 0 ? '[' : ',';
      add_candidate(c, rows.totals[row * ids_.size() + c], text);
    }
    text += "]}";
  }

 private:
  void add_candidate(std::size_t c, const decide::Totals& totals, std::string& text) const {
    text += R"({"id":)" + ids_[c];
    text += R"(,"energy_kwh":)" + number(totals.energy_kwh).dump();
    text += R"(,"cost":)" + number(totals.cost).dump();
    text += R"(,"present_cost":)";
    text += has_horizon_ ? number(totals.present_cost).dump() : "null";
    text += '}';
  }

  const WhatIfShown& shown_;
  bool has_horizon_;
  std::vector<std::string> ids_;  // By candidate, in quotes.
};

}  // namespace

std::string what_if_json_begin(const WhatIfShown& shown) {
  return "{\n  \"format\": \"wattweek-whatif-1\",\n  \"factors\": " + on_one_line(factors(shown)) +
         ",\n  \"years\": " + on_one_line(years(shown)) + ",\n  \"rows\": [";
}

std::string what_if_json(const WhatIfShown& shown, const decide::Rows& rows) {
  const RowWriter writer(shown);
  std::string text;
  for (std::size_t row = 0; row < rows.best.size(); ++row) {
    text += rows.first + row == 0 ? "\n    " : ",\n    ";
    writer.add(rows, row, text);
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
