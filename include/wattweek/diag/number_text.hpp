#pragma once
// Numbers rounded as people round them: halves away from zero. Always a decimal point, whatever
// the locale, and never -0.

#include <string>

namespace wattweek::diag {

/// So many digits after the point. What is written with a half, as 2.5 and 1.005 are, goes away
/// from zero, though the double nearest to it may lie a little below.
std::string fixed(double value, int decimals);

/// At most so many digits after the point, without the zeros at the end: 91.25, 8.5, 3.
std::string rounded(double value, int decimals);

}  // namespace wattweek::diag
