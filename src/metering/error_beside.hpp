#pragma once
// Errors of which a part is known and stays.

namespace wattweek::metering {

/// The standard error whose 1.96-fold holds 95 % of |N(bias, error)|: of a figure that is known to
/// be off by `bias` and is left so, while the rest of its error is normal. It is `error` where
/// there is no bias, and (|bias| + 1.645 error) / 1.96 where bias is all. F. C. Leone, L. S. Nelson
/// and R. B. Nottingham, Technometrics 3 (1961), 543-550, the folded normal distribution (from
/// memory); that a known effect which is not corrected widens the interval: JCGM 100:2008, F.2.4.5.
/// \pre error >= 0, both finite
double error_beside(double bias, double error);

}  // namespace wattweek::metering
