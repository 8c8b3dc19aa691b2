#include "wattweek/decide/turns.hpp"

#include <algorithm>

#include "parallel.hpp"
#include "wattweek/decide/ranking.hpp"

namespace wattweek::decide {

namespace {

// Each factor is looked at in so many steps first; see `WhatIf::crossings`.
constexpr std::size_t kSteps = 250;

using Problems = std::vector<diag::Diagnostic>;

/// Where two candidates swap places, ascending, with both ends of the sweep.
std::vector<double> borders(const std::vector<Crossing>& crossings) {
  std::vector<double> all{0};
  for (const Crossing& crossing : crossings) all.push_back(crossing.at);
  all.push_back(kFarthestFactor);
  all.erase(std::unique(all.begin(), all.end()), all.end());
  return all;
}

/// From today on downwards, or upwards, the first stretch on which another one is the best.
std::optional<Turn> turn(WhatIf& what_if, const std::vector<double>& borders, std::size_t today,
                         bool upwards) {
  const auto above = std::upper_bound(borders.begin(), borders.end(), 1.0) - borders.begin();
  for (std::ptrdiff_t i = above - (upwards ? 0 : 1);
       upwards ? i + 1 < static_cast<std::ptrdiff_t>(borders.size()) : i > 0;
       i += upwards ? 1 : -1) {
    const double from = borders[static_cast<std::size_t>(i)];
    const double to = borders[static_cast<std::size_t>(upwards ? i + 1 : i - 1)];
    const std::size_t best = what_if.best_at({from + (to - from) / 2});
    if (best != today) return Turn{from, best};
  }
  return std::nullopt;
}

/// Without a horizon a purchase of one candidate alone leaves nothing to rank by.
std::vector<Factor> ranked_factors(const model::Study& study) {
  std::vector<Factor> factors;
  for (const std::string& name : factor_names(study)) {
    const Factor factor = *factor_named(study, name);
    const bool is_purchase =
        factor.kind == Factor::Kind::purchase || factor.kind == Factor::Kind::purchase_of;
    if (is_purchase && criterion_of(study) != Criterion::present_cost) continue;
    factors.push_back(factor);
  }
  return factors;
}

Problems find_turns(const model::Study& study, const calendar::ZoneRules& zone, std::size_t& today,
                    Turns& turns) {
  WhatIf what_if(study, zone, {{turns.factor, 0, kFarthestFactor}}, 1);
  const auto found = what_if.crossings(kSteps);
  if (const auto* problems = std::get_if<Problems>(&found)) return *problems;
  const std::vector<double> all = borders(std::get<std::vector<Crossing>>(found));
  today = what_if.best_at({1});
  turns.below = turn(what_if, all, today, false);
  turns.above = turn(what_if, all, today, true);
  return {};
}

}  // namespace

std::variant<AllTurns, Problems> turns(const model::Study& study, const calendar::ZoneRules& zone,
                                       unsigned threads, const Progress& progress) {
  AllTurns all;
  for (const Factor& factor : ranked_factors(study)) all.turns.push_back({factor, {}, {}});
  std::vector<std::size_t> today(all.turns.size());
  std::vector<Problems> problems(all.turns.size());
  const auto count = static_cast<double>(all.turns.size());
  for_pieces(
      all.turns.size(), threads,
      [&](std::size_t i, unsigned) {
        problems[i] = find_turns(study, zone, today[i], all.turns[i]);
      },
      [&](std::size_t done) {
        if (progress) progress("factors", static_cast<double>(done) / count);
      });
  for (const Problems& of_factor : problems) {
    if (!of_factor.empty()) return of_factor;
  }
  all.best = today.front();
  return all;
}

}  // namespace wattweek::decide
