#pragma once
// The price level at which two candidates cost the same.

#include <optional>
#include <vector>

#include "wattweek/billing/bill.hpp"
#include "wattweek/decide/lifetime.hpp"

namespace wattweek::decide {

/// One month's bills of two candidates as functions of a factor x on all band and block
/// prices: bill(x) = max(minimum, standing + x energy_charge) (1 + tax). Amounts before tax.
struct MonthlyCharges {
  double standing = 0;
  std::optional<double> minimum;
  double candidate = 0;  ///< Bands and blocks at factor 1, with the candidate.
  double baseline = 0;   ///< The same with the baseline.
};

struct BreakEvenInput {
  std::vector<MonthlyCharges> months;
  double tax = 0;
  double yearly_factor = 1;    ///< Present value of 1 a year over the horizon.
  double fixed_candidate = 0;  ///< Present value of all that does not depend on prices.
  double fixed_baseline = 0;
};

/// The factor >= 0 on all band and block prices at which the present costs of the two are
/// equal. Each bill is piecewise linear in the factor, with one kink where it leaves the
/// minimum, so the roots are found exactly, piece by piece. Where there are several: the one
/// nearest to 1, of two at equal distance the lower; of an interval of equality its point
/// nearest to 1. Nothing where there is none, or none below 1e6.
std::optional<double> break_even_price_factor(const BreakEvenInput& input);

}  // namespace wattweek::decide
