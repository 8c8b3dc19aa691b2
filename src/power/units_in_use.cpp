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
void set_binomial_weights(std::size_t n, double p, std::vector<double>& weights) {
  weights.assign(n + 1, 0.0);
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
}

// Outcomes too rare for a double are left out.
void set_binomial(std::size_t n, double p, UnitsInUse& result) {
  std::vector<double>& probability = result.probability;
  set_binomial_weights(n, p, probability);
  const double sum = std::accumulate(probability.begin(), probability.end(), 0.0);
  result.units.clear();
  for (std::size_t k = 0; k <= n; ++k) {
    const double of_k = probability[k] / sum;
    if (of_k <= 0) continue;
    probability[result.units.size()] = of_k;
    result.units.push_back(static_cast<double>(k));
  }
  probability.resize(result.units.size());
}

// Nobody uses it: 0 units with certainty.
void set_none(UnitsInUse& result) {
  result.units.assign(1, 0.0);
  result.probability.assign(1, 1.0);
  result.mean = result.most = 0;
}

// The memory of `result` is used again.
void set_use(const UseLaw& use, UnitsInUse& result) {
  if (use.units <= 0 || use.share <= 0) return set_none(result);
  if (use.share >= 1) {
    result.units.assign(1, use.units);
    result.probability.assign(1, 1.0);
  } else if (use.pattern == model::Pattern::together) {
    result.units.assign({0.0, use.units});
    result.probability.assign({1 - use.share, use.share});
  } else {
    set_binomial(static_cast<std::size_t>(use.units), use.share, result);
  }
  result.mean = use.units * use.share;
  result.most = use.units;
}

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

UnitsInUse units_in_use(const UseLaw& use) {
  UnitsInUse result;
  set_use(use, result);
  return result;
}

bool units_in_use(const std::vector<UseLaw>& uses, UnitsInUse& sum) {
  set_none(sum);
  for (const UseLaw& use : uses) {
    if (use.pattern == model::Pattern::independent &&
        use.units >= static_cast<double>(kMostOutcomes)) {
      return false;
    }
    if (sum.most <= 0) {  // Nothing is added to.
      set_use(use, sum);
      continue;
    }
    const UnitsInUse before = std::move(sum);
    const UnitsInUse more = units_in_use(use);
    if (!convolve(before, more, sum)) return false;
    sum.mean = before.mean + more.mean;
    sum.most = before.most + more.most;
  }
  return true;
}

}  // namespace wattweek::power
