#pragma once
// A contract with all its figures settled: what the bill is reckoned with. Central figures are
// the midpoints of the user's ranges; a what-if on prices changes the law.

#include <algorithm>
#include <array>
#include <optional>
#include <vector>

#include "wattweek/model/tariff.hpp"
#include "wattweek/units/quantity.hpp"

namespace wattweek::billing {

/// One step of a ladder: `price` on the part of the consumption up to `up_to`.
struct Step {
  std::optional<units::Energy> up_to;  ///< Per month or per day; the last step has none.
  units::UnitPrice price;
};
using Ladder = std::vector<Step>;

struct TariffLaw {
  double tax = 0;
  units::Money standing_per_day;
  units::Money standing_per_month;
  std::optional<units::Money> minimum_per_month;
  std::vector<units::UnitPrice> band_prices;
  std::array<Ladder, 12> ladders;  ///< January first; empty: no blocks in that month.
  model::BlocksPer blocks_per = model::BlocksPer::month;
};

/// The midpoints of a tariff, its blocks sorted into one ladder for each month.
TariffLaw central_law(const model::Tariff& tariff);

/// The same contract with every band and block price multiplied; standing charge and minimum
/// stay as they are.
TariffLaw scale_prices(const TariffLaw& law, double factor);

/// A price or an amount with the tariff's tax: the least and the most that it can be.
template <class T>
units::Range<T> with_tax(const units::Range<T>& before, const units::Range<double>& tax) {
  const auto [least, most] =
      std::minmax({before.low * (1 + tax.low), before.low * (1 + tax.high),
                   before.high * (1 + tax.low), before.high * (1 + tax.high)});
  return {least, most};
}

/// What a ladder charges on `consumption`, its limits multiplied by `limit_factor` (the days
/// of the period where limits are per day, else 1).
units::Money ladder_amount(const Ladder& ladder, double limit_factor, units::Energy consumption);

/// What of the consumption lies on a step of a ladder.
struct BlockLine {
  std::optional<units::Energy> up_to;  ///< The step's limit, times `limit_factor`.
  units::Energy energy;
  units::UnitPrice price;
  units::Money amount;
};

/// The lines behind `ladder_amount`: one for each step, those that are not reached with 0 kWh.
std::vector<BlockLine> ladder_lines(const Ladder& ladder, double limit_factor,
                                    units::Energy consumption);

}  // namespace wattweek::billing
