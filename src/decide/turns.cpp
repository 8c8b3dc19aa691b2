#include "wattweek/decide/turns.hpp"

#include <algorithm>

#include "parallel.hpp"
#include "wattweek/decide/lifetime.hpp"
#include "wattweek/decide/ranking.hpp"

namespace wattweek::decide {

namespace {

// Each factor is looked at in so many steps first; see `WhatIf::crossings`.
constexpr std::size_t kSteps = 250;

using Problems = std::vector<diag::Diagnostic>;

/// One factor, and where today's best swaps places with others.
struct Looked {
  WhatIf& what_if;
  std::size_t today;
  std::vector<Crossing> crossings;  ///< Ascending.
};

/// Both ends of the sweep, and all places between, ascending; those that are equal once.
std::vector<double> borders(const std::vector<Crossing>& crossings) {
  std::vector<double> all{0};
  for (const Crossing& crossing : crossings) all.push_back(crossing.at);
  all.push_back(kFarthestFactor);
  all.erase(std::unique(all.begin(), all.end(), nearly_equal), all.end());
  return all;
}

/// Who takes the lead where today's best loses it: the one that it swaps places with. Of several at
/// the same place the best a little beyond.
std::size_t new_best(const Looked& looked, double from, double to) {
  std::vector<std::size_t> others;
  for (const Crossing& crossing : looked.crossings) {
    if (!nearly_equal(crossing.at, from)) continue;
    others.push_back(crossing.first == looked.today ? crossing.second : crossing.first);
  }
  return others.size() == 1 ? others.front() : looked.what_if.best_at({from + (to - from) / 1024});
}

/// From today on downwards, or upwards, the first stretch on which another one is the best.
std::optional<Turn> turn(const Looked& looked, bool upwards) {
  const std::vector<double> all = borders(looked.crossings);
  const auto above = std::upper_bound(all.begin(), all.end(), 1.0) - all.begin();
  for (std::ptrdiff_t i = above - (upwards ? 0 : 1);
       upwards ? i + 1 < static_cast<std::ptrdiff_t>(all.size()) : i > 0; i += upwards ? 1 : -1) {
    const double from = all[static_cast<std::size_t>(i)];
    const double to = all[static_cast<std::size_t>(upwards ? i + 1 : i - 1)];
    if (looked.what_if.best_at({from + (to - from) / 2}) == looked.today) continue;
    return Turn{from, new_best(looked, from, to)};
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

Problems find_turns(const WhatIf& any, std::size_t today, Turns& turns) {
  WhatIf what_if(any, {{turns.factor, 0, kFarthestFactor}}, 1);
  auto found = what_if.crossings(kSteps, today);
  if (const auto* problems = std::get_if<Problems>(&found)) return *problems;
  const Looked looked{what_if, today, std::get<std::vector<Crossing>>(std::move(found))};
  turns.below = turn(looked, false);
  turns.above = turn(looked, true);
  return {};
}

}  // namespace

std::variant<AllTurns, Problems> turns(const model::Study& study, const calendar::ZoneRules& zone,
                                       unsigned threads, const Progress& progress) {
  AllTurns all;
  for (const Factor& factor : ranked_factors(study)) all.turns.push_back({factor, {}, {}});
  WhatIf as_it_is(study, zone, {{all.turns.front().factor, 1, 1, 1}}, 1);
  all.best = as_it_is.best_at({1});
  std::vector<Problems> problems(all.turns.size());
  const auto count = static_cast<double>(all.turns.size());
  for_pieces(
      all.turns.size(), threads,
      [&](std::size_t i, unsigned) { problems[i] = find_turns(as_it_is, all.best, all.turns[i]); },
      [&](std::size_t done) {
        if (progress) progress("factors", static_cast<double>(done) / count);
      });
  for (const Problems& of_factor : problems) {
    if (!of_factor.empty()) return of_factor;
  }
  return all;
}

}  // namespace wattweek::decide
