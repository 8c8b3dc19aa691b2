#pragma once
// What a candidate may cost to buy if it is to pay back in time.

#include <cstddef>
#include <optional>
#include <vector>

#include "wattweek/model/study.hpp"

namespace wattweek::decide {

struct Assessment;

/// The most that a candidate may cost to buy, so that against the baseline it has paid back within
/// the years asked for. Below 0: not even as a gift.
struct PaybackTarget {
  std::size_t candidate = 0;
  double purchase = 0;  ///< By plain savings: the baseline's purchase + years x savings a year.
  /// With discounting, price rises and later costs, and to stay so to the end of the horizon;
  /// nothing without a horizon, or where the years asked for reach beyond it.
  std::optional<double> discounted_purchase;
};

struct PaybackTargets {
  int within_years = 1;
  std::vector<PaybackTarget> rows;  ///< One for every candidate but the baseline, in order.
};

PaybackTargets payback_targets(const model::Study& study, const Assessment& assessment,
                               int within_years);

}  // namespace wattweek::decide
