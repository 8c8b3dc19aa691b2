#pragma once
// What every candidate costs as the level of electricity prices changes, and how sure it is which
// of the best two is ahead.

#include <cstdint>
#include <optional>
#include <utility>
#include <variant>
#include <vector>

#include "wattweek/calendar/zone.hpp"
#include "wattweek/decide/progress.hpp"
#include "wattweek/decide/what_if.hpp"
#include "wattweek/diag/diagnostic.hpp"
#include "wattweek/model/study.hpp"
#include "wattweek/units/range.hpp"

namespace wattweek::decide {

/// What the second best costs more than the best, at each price level: the two that are best today.
struct Lead {
  std::size_t best = 0;
  std::size_t second = 0;
  std::vector<double> more;  ///< Criterion of the second less that of the best: central results.
  /// 95 of 100 draws lie within (percentiles as in `Spread`); empty where nobody drew or no range
  /// is open.
  std::vector<units::Range<double>> likely;
};

struct PriceSweep {
  std::vector<double> factors;  ///< On every band and block price: even steps from 0, 1 among them.
  std::vector<std::vector<double>> criteria;  ///< [candidate][factor]; see `criterion_of`.
  std::vector<Crossing> crossings;            ///< From the first factor to the last.
  std::optional<Lead> lead;                   ///< Nothing for one candidate alone.
};

struct PriceSweepOptions {
  double highest = 2;       ///< The last factor, a whole number.
  std::size_t points = 21;  ///< So many factors; 1 must be among them.
  std::size_t draws = 0;    ///< For `Lead::likely`; 0: none.
  std::uint64_t seed = 1;
  unsigned threads = 1;  ///< Changes how long it takes, and nothing else.
};

/// Sweeps the level of prices. Diagnostics where a draw has more joint outcomes than can be merged.
/// \pre `assess` has accepted the study; it has a criterion (see `criterion_of`).
std::variant<PriceSweep, std::vector<diag::Diagnostic>> price_sweep(
    const model::Study& study, const calendar::ZoneRules& zone, const PriceSweepOptions& options,
    const Progress& progress = {});

}  // namespace wattweek::decide
