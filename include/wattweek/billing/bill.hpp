#pragma once
// Start here: one month's bill, line by line, as the household's paper bill would show it.

#include <vector>

#include "wattweek/billing/tariff_law.hpp"

namespace wattweek::billing {

/// The time that one bill covers.
struct BillingPeriod {
  unsigned month = 0;  ///< 0 is January: decides which ladder of blocks holds.
  double days = 0;     ///< Calendar days: for daily charges and daily block limits.
  std::vector<units::Hours> band_hours;  ///< Elapsed time in each band.
};

struct BandLine {
  units::Energy energy;
  units::Money amount;
};

/// All amounts but `tax` and `total` are before tax.
struct Bill {
  units::Energy energy;  ///< All that is billed.
  units::Money standing;
  std::vector<BandLine> bands;
  units::Money blocks;
  units::Money minimum_top_up;  ///< What is missing to the minimum, if any.
  units::Money tax;             ///< On everything, the top-up too.
  units::Money total;           ///< The sum of all five.
};

/// The bill for a household's own use and, on top, `extra` energy in each band:
///
///     max(minimum, standing_per_day days + standing_per_month
///                  + sum_b E_b price_b + H q + blocks(H + sum_b E_b)) (1 + tax)
///
/// The household's own energy H lies in the bands in proportion to their hours, which is the same
/// as billing it at the time-weighted mean band price q.
///
/// Simplification: nothing is rounded; contracts that round each line differ by cents.
Bill bill(const TariffLaw& law, const BillingPeriod& period, units::Energy household,
          const std::vector<units::Energy>& extra);

}  // namespace wattweek::billing
