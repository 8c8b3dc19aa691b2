#include "wattweek/decide/price_sweep.hpp"

#include "wattweek/decide/ranking.hpp"

namespace wattweek::decide {

std::variant<PriceSweep, std::vector<diag::Diagnostic>> price_sweep(
    const model::Study& study, const calendar::ZoneRules& zone, const PriceSweepOptions& options,
    const Progress& progress) {
  const Sweep sweep{{Factor::Kind::price, 0}, 0, options.highest, options.points};
  WhatIf grid(study, zone, {sweep}, options.threads);
  std::vector<diag::Diagnostic> problems = grid.prepare(progress);
  Rows rows;
  if (problems.empty()) problems = grid.reckon(0, options.points, rows);
  if (!problems.empty()) return problems;
  PriceSweep result;
  result.criteria.resize(study.candidates.size());
  const bool present = criterion_of(study) == Criterion::present_cost;
  for (std::size_t p = 0; p < options.points; ++p) {
    result.factors.push_back(sweep.at(p));
    for (std::size_t c = 0; c < study.candidates.size(); ++c) {
      const Totals& totals = rows.totals[p * study.candidates.size() + c];
      result.criteria[c].push_back(present ? totals.present_cost : totals.cost);
    }
  }
  auto crossings = grid.crossings();
  if (auto* found = std::get_if<std::vector<Crossing>>(&crossings)) result.crossings = *found;
  return result;
}

}  // namespace wattweek::decide
