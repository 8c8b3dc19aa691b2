#include <fmt/format.h>

#include <iterator>

#include "csv_parts.hpp"
#include "numbers.hpp"
#include "wattweek/report/what_if.hpp"

namespace wattweek::report {

std::string what_if_csv_header(const WhatIfShown& shown) {
  std::string line;
  for (const decide::Sweep& sweep : shown.sweeps) line += name_of(shown.study, sweep.factor) + ",";
  line += "years,currency,best";
  for (const model::Candidate& candidate : shown.study.candidates) {
    line += fmt::format(",energy_kwh {0},cost {0},present_cost {0}", candidate.id);
  }
  return line + "\r\n";
}

std::string what_if_csv(const WhatIfShown& shown, const decide::Rows& rows) {
  const std::vector<model::Candidate>& all = shown.study.candidates;
  const auto& lifetime = shown.assessment.candidates.front().lifetime;
  const std::string fixed_cells =
      fmt::format("{},{},", lifetime ? fmt::format("{}", lifetime->years) : "",
                  csv_words(shown.study.tariff.currency));
  std::string text;
  const auto add = [&text](double value) {
    fmt::format_to(std::back_inserter(text), "{}", value == 0 ? 0.0 : value);
  };
  for (std::size_t row = 0; row < rows.best.size(); ++row) {
    for (const double value : decide::values_in_row(shown.sweeps, rows.first + row)) {
      add(value);
      text += ',';
    }
    text += fixed_cells + csv_words(all[rows.best[row]].id);
    for (std::size_t c = 0; c < all.size(); ++c) {
      const decide::Totals& totals = rows.totals[row * all.size() + c];
      text += ',';
      add(totals.energy_kwh);
      text += ',';
      add(totals.cost);
      text += ',';
      if (lifetime) add(totals.present_cost);
    }
    text += "\r\n";
  }
  return text;
}

}  // namespace wattweek::report
