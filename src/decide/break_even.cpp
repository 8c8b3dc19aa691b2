#include "wattweek/decide/break_even.hpp"

#include <algorithm>
#include <cmath>

namespace wattweek::decide {

namespace {

// A factor beyond this is no price that anybody will see.
constexpr double kLargestFactor = 1e6;

double bill_before_tax(const MonthlyCharges& month, double charge, double factor) {
  const double plain = month.standing + factor * charge;
  return month.minimum ? std::max(*month.minimum, plain) : plain;
}

// The two present costs, each but for the same bills without either, at a price factor.
struct Costs {
  double candidate = 0;
  double baseline = 0;

  double difference() const { return candidate - baseline; }
  bool equal() const { return nearly_equal(candidate, baseline); }
};

Costs costs_at(const BreakEvenInput& input, double factor) {
  Costs yearly;
  for (const MonthlyCharges& month : input.months) {
    yearly.candidate += bill_before_tax(month, month.candidate, factor);
    yearly.baseline += bill_before_tax(month, month.baseline, factor);
  }
  const double present = input.yearly_factor * (1 + input.tax);
  return {input.fixed_candidate + present * yearly.candidate,
          input.fixed_baseline + present * yearly.baseline};
}

// Where a bill leaves the minimum, and the ends of what is looked at.
std::vector<double> kinks(const BreakEvenInput& input) {
  std::vector<double> factors{0.0, kLargestFactor};
  for (const MonthlyCharges& month : input.months) {
    if (!month.minimum) continue;
    for (const double charge : {month.candidate, month.baseline}) {
      const double factor = (*month.minimum - month.standing) / charge;
      if (factor > 0 && factor < kLargestFactor) factors.push_back(factor);
    }
  }
  std::sort(factors.begin(), factors.end());
  factors.erase(std::unique(factors.begin(), factors.end()), factors.end());
  return factors;
}

// Keeps, of the ascending factors it is shown, the one nearest to 1, the lower of two that are
// equally near.
class NearestToOne {
 public:
  void consider(double factor) {
    const double distance = std::abs(factor - 1);
    if (best_ && (distance >= distance_ || nearly_equal(distance, distance_))) return;
    best_ = factor;
    distance_ = distance;
  }
  std::optional<double> best() const { return best_; }

 private:
  std::optional<double> best_;
  double distance_ = 0;
};

// Equality on a piece between two kinks, on which both costs are straight lines.
void consider_piece(const BreakEvenInput& input, double from, double to, NearestToOne& nearest) {
  const Costs at_from = costs_at(input, from);
  const Costs at_to = costs_at(input, to);
  if (at_from.equal() && at_to.equal()) {
    nearest.consider(std::clamp(1.0, from, to));
    return;
  }
  const double d_from = at_from.difference();
  const double d_to = at_to.difference();
  const bool changes_sign = (d_from < 0) != (d_to < 0);
  if (!changes_sign && !at_from.equal() && !at_to.equal()) return;
  const double root = from + (to - from) * (d_from / (d_from - d_to));
  nearest.consider(std::clamp(root, from, to));
}

}  // namespace

std::optional<double> break_even_price_factor(const BreakEvenInput& input) {
  const std::vector<double> factors = kinks(input);
  NearestToOne nearest;
  for (std::size_t i = 0; i + 1 < factors.size(); ++i) {
    consider_piece(input, factors[i], factors[i + 1], nearest);
  }
  return nearest.best();
}

}  // namespace wattweek::decide
