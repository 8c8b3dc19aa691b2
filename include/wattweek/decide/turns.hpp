#pragma once
// What would change the answer: for each single factor the values nearest to today's at which
// another candidate becomes the best.

#include <optional>
#include <variant>
#include <vector>

#include "wattweek/decide/what_if.hpp"

namespace wattweek::decide {

/// Factors are looked at from 0 to so many times today's figures.
inline constexpr double kFarthestFactor = 10;

/// At this value of the factor another candidate becomes the best.
struct Turn {
  double at = 1;
  std::size_t best = 0;
};

struct Turns {
  Factor factor;
  std::optional<Turn> below;  ///< Nothing: not down to 0.
  std::optional<Turn> above;  ///< Nothing: not up to kFarthestFactor.
};

struct AllTurns {
  std::size_t best = 0;      ///< Today.
  std::vector<Turns> turns;  ///< Of every factor of the study that has a criterion.
};

/// \pre `assess` has accepted the study; it has a criterion (see `criterion_of`).
std::variant<AllTurns, std::vector<diag::Diagnostic>> turns(const model::Study& study,
                                                            const calendar::ZoneRules& zone,
                                                            unsigned threads,
                                                            const Progress& progress = {});

}  // namespace wattweek::decide
