#include "error_beside.hpp"

#include <cmath>
#include <numbers>

namespace wattweek::metering {

namespace {

constexpr double kQuantile = 1.959963984540054;  // Of the normal distribution, 97.5 %.

double normal_below(double z) { return std::erfc(-z / std::numbers::sqrt2) / 2; }

}  // namespace

double error_beside(double bias, double error) {
  const double off = std::abs(bias);
  if (!(error > 0)) return off / kQuantile;
  // The end of the interval lies between what would do without bias and both ends in a row.
  double low = kQuantile * error;
  double high = off + low;
  for (int step = 0; step < 60; ++step) {
    const double end = (low + high) / 2;
    const double inside = normal_below((end - off) / error) - normal_below((-end - off) / error);
    (inside < 0.95 ? low : high) = end;
  }
  return high / kQuantile;
}

}  // namespace wattweek::metering
