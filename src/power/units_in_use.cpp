#include "wattweek/power/units_in_use.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <utility>

namespace wattweek::power {

namespace {

// More pairs than this are not even formed for merging.
constexpr std::size_t kMostPairs = 4 * kMostOutcomes;

// Sums that differ by less are the same number of units written in another order.
constexpr double kSameUnits = 1e-9;

// P(k) / P(mode) for k = 0..n, outward from the mode so that nothing overflows.
std::vector<double> binomial_weights(std::size_t n, double p) {
  std::vector<double> weights(n + 1, 0.0);
  const auto count = static_cast<double>(n);
  const auto mode = std::min(n, static_cast<std::size_t>((count + 1) * p));
  const double odds = p / (1 - p);
  weights[mode] = 1;
  for (std::size_t k = mode; k < n && weights[k] > 0; ++k) {
    weights[k + 1] =
        weights[k] * odds * (count - static_cast<double>(k)) / static_cast<double>(k + 1);
  }
  for (std::size_t k = mode; k > 0 && weights[k] > 0; --k) {
    weights[k - 1] =
        weights[k] / odds * static_cast<double>(k) / (count - static_cast<double>(k - 1));
  }
  return weights;
}

UnitsInUse binomial(std::size_t n, double p) {
  const std::vector<double> weights = binomial_weights(n, p);
  const double sum = std::accumulate(weights.begin(), weights.end(), 0.0);
  UnitsInUse result;
  result.units.reserve(n + 1);
  result.probability.reserve(n + 1);
  for (std::size_t k = 0; k <= n; ++k) {
    const double probability = weights[k] / sum;
    if (probability <= 0) continue;
    result.units.push_back(static_cast<double>(k));
    result.probability.push_back(probability);
  }
  return result;
}

UnitsInUse together(double units, double share) { return {{0.0, units}, {1 - share, share}, 0, 0}; }

struct Outcome {
  double units;
  double probability;
};

// All sums of two independent numbers, ascending, equal ones merged.
bool convolve(const UnitsInUse& a, const UnitsInUse& b, UnitsInUse& sum) {
  if (a.units.size() > kMostPairs / b.units.size()) return false;
  std::vector<Outcome> pairs;
  pairs.reserve(a.units.size() * b.units.size());
  for (std::size_t i = 0; i < a.units.size(); ++i) {
    for (std::size_t j = 0; j < b.units.size(); ++j) {
      pairs.push_back({a.units[i] + b.units[j], a.probability[i] * b.probability[j]});
    }
  }
  std::stable_sort(pairs.begin(), pairs.end(),
                   [](const Outcome& x, const Outcome& y) { return x.units < y.units; });
  sum.units.clear();
  sum.probability.clear();
  for (const Outcome& pair : pairs) {
    if (!sum.units.empty() && pair.units - sum.units.back() <= kSameUnits * (1 + pair.units)) {
      sum.probability.back() += pair.probability;
    } else {
      sum.units.push_back(pair.units);
      sum.probability.push_back(pair.probability);
    }
  }
  return sum.units.size() <= kMostOutcomes;
}

}  // namespace

UnitsInUse none_in_use() { return {{0.0}, {1.0}, 0, 0}; }

UnitsInUse units_in_use(const UseLaw& use) {
  if (use.units <= 0 || use.share <= 0) return none_in_use();
  UnitsInUse result;
  if (use.share >= 1) {
    result = {{use.units}, {1.0}, 0, 0};
  } else if (use.pattern == model::Pattern::together) {
    result = together(use.units, use.share);
  } else {
    result = binomial(static_cast<std::size_t>(use.units), use.share);
  }
  result.mean = use.units * use.share;
  result.most = use.units;
  return result;
}

bool units_in_use(const std::vector<UseLaw>& uses, UnitsInUse& sum) {
  if (uses.empty()) {
    sum = none_in_use();
    return true;
  }
  sum = {};
  for (const UseLaw& use : uses) {
    if (use.pattern == model::Pattern::independent &&
        use.units >= static_cast<double>(kMostOutcomes)) {
      return false;
    }
    UnitsInUse more = units_in_use(use);
    if (sum.most <= 0) {  // Nothing is added to.
      sum = std::move(more);
      continue;
    }
    const UnitsInUse before = std::move(sum);
    if (!convolve(before, more, sum)) return false;
    sum.mean = before.mean + more.mean;
    sum.most = before.most + more.most;
  }
  return true;
}

}  // namespace wattweek::power
