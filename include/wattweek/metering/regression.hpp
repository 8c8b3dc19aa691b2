#pragma once
// Idle watts and what each workload adds, from watts and the units in use beside them.
//
// Simplifications: each unit adds the same watts; what the meter rounds away is as large under load
// as at idle.

#include <optional>
#include <string>
#include <vector>

#include "wattweek/metering/fit.hpp"
#include "wattweek/metering/measured.hpp"

namespace wattweek::metering {

struct Regression {
  std::optional<Estimate> idle_w;             ///< Nothing where a workload is in step with it.
  std::vector<IncrementEstimate> increments;  ///< One of each workload, in their order.
  Residuals residuals;                        ///< All 0 where no time is awake.
};

/// Fits watts = idle + sum of units in use x increment over all time that is neither off nor
/// asleep, none of them negative, weighted by time.
///
/// Coefficients: weighted least squares on the mean watts of each combination of units in use (the
/// same as on all readings), by non_negative_least_squares. Standard errors: the sandwich of H.
/// White, Econometrica 48 (1980), 817-838, of `long_run` of what each cell adds to a coefficient,
/// over an hour or more, times n / (n - p) for n cells with time and p coefficients. For a workload
/// whose use lies so close together that the kernel sees more than a fifth of it at once, at
/// least that by the long-run variance of all residuals. A coefficient that the rule holds at 0 is
/// taken as known by the others; its own standard error is the one that it would have, were it free
/// beside them. To these, `rounding_error_of_unused_w` of the idle level is added as an error that
/// each combination of units has by itself. Where a coefficient would be another one without the
/// intervals of `Measured::changing`, it is wide enough to allow for that difference.
///
/// Where no parcel is awake there is neither idle nor an increment.
/// \param workloads names, in the order of the columns of `measured.designs`
Regression regress(const Measured& measured, const std::vector<std::string>& workloads,
                   const std::vector<Level>& levels);

}  // namespace wattweek::metering
