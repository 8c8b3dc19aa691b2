#pragma once
// What a little more costs: the mental units of the trade.

#include <cstddef>
#include <optional>
#include <vector>

#include "wattweek/decide/assessment.hpp"

namespace wattweek::decide {

/// What one watt more, drawn at all hours of the study on top of the household's own use, adds to
/// its bills: blocks, minimum and tax included.
units::Money cost_of_one_watt(const Assessment& assessment);

/// A stretch of a ladder, and what one more kWh costs on it.
struct NextKwh {
  model::MonthSet months;                 ///< In which it holds.
  std::optional<units::Energy> up_to;     ///< As in `billing::Step`; nothing: without end.
  std::vector<units::UnitPrice> by_band;  ///< Band and block price together, with tax.
};

/// What the next kWh costs in each block and price band, while the minimum bill is passed:
///
///     (band price + block price) (1 + tax)
///
/// Months with the same ladder stand together, in the order of their first month. A contract
/// without blocks has one entry.
std::vector<NextKwh> next_kwh(const billing::TariffLaw& law);

}  // namespace wattweek::decide
