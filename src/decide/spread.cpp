#include "spread.hpp"

#include <algorithm>
#include <cmath>

namespace wattweek::decide {

namespace {

double percentile(std::vector<double>& values, double p) {
  const double at = static_cast<double>(values.size() - 1) * p;
  const auto below = static_cast<std::ptrdiff_t>(at);
  std::nth_element(values.begin(), values.begin() + below, values.end());
  const double low = values[static_cast<std::size_t>(below)];
  const double part = at - static_cast<double>(below);
  if (part == 0) return low;
  return low + (*std::min_element(values.begin() + below + 1, values.end()) - low) * part;
}

}  // namespace

Spread spread_of(std::vector<double> values) {
  Spread spread;
  const auto count = static_cast<double>(values.size());
  // About the first, so that what never changes has exactly no deviation.
  const double first = values.front();
  for (const double value : values) spread.mean += (value - first) / count;
  spread.mean += first;
  double squares = 0;
  for (const double value : values) squares += (value - spread.mean) * (value - spread.mean);
  spread.sd = std::sqrt(squares / (count - 1));
  spread.p2_5 = percentile(values, 0.025);
  spread.p50 = percentile(values, 0.5);
  spread.p97_5 = percentile(values, 0.975);
  return spread;
}

}  // namespace wattweek::decide
