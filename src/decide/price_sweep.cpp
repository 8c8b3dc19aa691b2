#include "wattweek/decide/price_sweep.hpp"

#include <algorithm>
#include <cassert>
#include <mutex>

#include "parallel.hpp"
#include "points.hpp"
#include "refusals.hpp"
#include "spread.hpp"
#include "wattweek/decide/ranking.hpp"
#include "wattweek/decide/scenario.hpp"
#include "wattweek/decide/settled_study.hpp"

namespace wattweek::decide {

namespace {

// The draws are cut into so many pieces, whatever the threads.
constexpr std::size_t kPieces = 16;

using Problems = std::vector<diag::Diagnostic>;

double criterion(const Totals& totals, Criterion by) {
  return by == Criterion::present_cost ? totals.present_cost : totals.cost;
}

/// Every draw of what the second costs more than the best, at each price level.
class LeadDrawer {
 public:
  LeadDrawer(const model::Study& study, const calendar::ZoneRules& zone,
             const PriceSweepOptions& options, const PriceSweep& sweep)
      : study_(study),
        options_(options),
        sweep_(sweep),
        by_(criterion_of(study)),
        plan_(plan_scenarios(study, zone)),
        more_(sweep.factors.size(), std::vector<double>(options.draws)) {}

  /// Fills `likely`. Nothing, or what a draw has too many outcomes of.
  Problems run(std::vector<units::Range<double>>& likely) {
    for_pieces(kPieces, options_.threads, [&](std::size_t piece, unsigned) { draw_piece(piece); });
    if (!problems_.empty()) return problems_;
    for (std::vector<double>& draws : more_) {
      const Spread spread = spread_of(std::move(draws));
      likely.push_back({spread.p2_5, spread.p97_5});
    }
    return {};
  }

 private:
  void draw_piece(std::size_t piece) {
    const std::size_t begin = options_.draws * piece / kPieces;
    const std::size_t end = options_.draws * (piece + 1) / kPieces;
    SettledStudy settled(study_);
    ScenarioReckoner reckoner(plan_, {sweep_.lead->best, sweep_.lead->second});
    Points points(settled.keys().size(), options_.seed, begin);
    std::vector<double> point;
    std::vector<Totals> totals;
    for (std::size_t n = begin; n < end; ++n) {
      points.next(point);
      for (std::size_t r = 0; r < point.size(); ++r) settled.settle(r, point[r]);
      if (const auto refused = reckoner.reckon(settled.study(), totals)) return refuse(*refused);
      for (std::size_t f = 0; f < sweep_.factors.size(); ++f) {
        more_[f][n] = criterion_at(reckoner, sweep_.factors[f], sweep_.lead->second) -
                      criterion_at(reckoner, sweep_.factors[f], sweep_.lead->best);
      }
    }
  }

  double criterion_at(const ScenarioReckoner& reckoner, double factor,
                      std::size_t candidate) const {
    return criterion(reckoner.at_prices(factor, candidate), by_);
  }

  void refuse(const ScenarioRefused& refused) {
    const std::lock_guard lock(guards_problems_);
    if (!problems_.empty()) return;
    problems_.push_back(too_many_outcomes(study_, refused.candidate, plan_.folded,
                                          plan_.candidates[refused.candidate], refused.outcomes));
  }

  const model::Study& study_;
  const PriceSweepOptions& options_;
  const PriceSweep& sweep_;
  const Criterion by_;
  const ScenarioPlan plan_;
  std::vector<std::vector<double>> more_;  // [factor][draw]
  std::mutex guards_problems_;
  Problems problems_;
};

void fill_criteria(const WhatIf& grid, const Rows& rows, Criterion by, PriceSweep& sweep) {
  const std::size_t points = grid.rows();
  const std::size_t candidates = rows.totals.size() / points;
  sweep.criteria.assign(candidates, {});
  for (std::size_t p = 0; p < points; ++p) {
    sweep.factors.push_back(grid.sweeps().front().at(p));
    for (std::size_t c = 0; c < candidates; ++c) {
      sweep.criteria[c].push_back(criterion(rows.totals[p * candidates + c], by));
    }
  }
}

/// \pre There are several candidates; 1 is among the factors.
Lead lead_of(const PriceSweep& sweep) {
  const auto today = static_cast<std::size_t>(
      std::find(sweep.factors.begin(), sweep.factors.end(), 1.0) - sweep.factors.begin());
  assert(today < sweep.factors.size());
  std::vector<double> criteria;
  for (const auto& of_candidate : sweep.criteria) criteria.push_back(of_candidate[today]);
  const auto [best, second] = best_two_of(criteria);
  Lead lead{best, second, {}, {}};
  for (std::size_t p = 0; p < sweep.factors.size(); ++p) {
    lead.more.push_back(sweep.criteria[second][p] - sweep.criteria[best][p]);
  }
  return lead;
}

}  // namespace

std::variant<PriceSweep, Problems> price_sweep(const model::Study& study,
                                               const calendar::ZoneRules& zone,
                                               const PriceSweepOptions& options,
                                               const Progress& progress) {
  WhatIf grid(study, zone, {{{Factor::Kind::price, 0}, 0, options.highest, options.points}},
              options.threads);
  Problems problems = grid.prepare(progress);
  Rows rows;
  if (problems.empty()) problems = grid.reckon(0, grid.rows(), rows);
  if (!problems.empty()) return problems;
  PriceSweep sweep;
  fill_criteria(grid, rows, criterion_of(study), sweep);
  auto crossings = grid.crossings();
  if (auto* none = std::get_if<Problems>(&crossings)) return std::move(*none);
  sweep.crossings = std::get<std::vector<Crossing>>(std::move(crossings));
  if (study.candidates.size() < 2) return sweep;
  sweep.lead = lead_of(sweep);
  if (options.draws > 0 && !SettledStudy(study).keys().empty()) {
    problems = LeadDrawer(study, zone, options, sweep).run(sweep.lead->likely);
    if (!problems.empty()) return problems;
  }
  return sweep;
}

}  // namespace wattweek::decide
