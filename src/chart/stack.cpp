#include "stack.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numeric>

namespace wattweek::chart {
namespace {

double size_of(const Part& part) {
  double size = 0;
  for (const double value : part.values) size += std::fabs(value);
  return size;
}

// Whether each part is among the largest.
std::vector<bool> are_largest(const std::vector<Part>& parts, std::size_t count) {
  std::vector<std::size_t> order(parts.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    return size_of(parts[a]) > size_of(parts[b]);
  });
  std::vector<bool> largest(parts.size(), false);
  for (std::size_t i = 0; i < count; ++i) largest[order[i]] = true;
  return largest;
}

void add(Part& sum, const Part& part) {
  sum.values.resize(part.values.size(), 0);
  for (std::size_t i = 0; i < part.values.size(); ++i) sum.values[i] += part.values[i];
}

}  // namespace

std::vector<Part> merged(const std::vector<Part>& parts, std::size_t most) {
  if (parts.size() <= most) return parts;
  const std::vector<bool> largest = are_largest(parts, most - 1);
  std::vector<Part> kept;
  Part others{fmt::format("{} others", parts.size() - most + 1), {}};
  for (std::size_t i = 0; i < parts.size(); ++i) {
    if (largest[i]) {
      kept.push_back(parts[i]);
    } else {
      add(others, parts[i]);
    }
  }
  kept.push_back(others);
  return kept;
}

std::vector<std::vector<Range>> stacked(const std::vector<Part>& parts, std::size_t months) {
  std::vector<Range> reached(months);
  std::vector<std::vector<Range>> places;
  for (const Part& part : parts) {
    std::vector<Range> place(months);
    for (std::size_t m = 0; m < months; ++m) {
      double& end = part.values[m] < 0 ? reached[m].low : reached[m].high;
      place[m] = {std::min(end, end + part.values[m]), std::max(end, end + part.values[m])};
      end += part.values[m];
    }
    places.push_back(place);
  }
  return places;
}

std::vector<double> sums(const std::vector<Part>& parts, std::size_t months) {
  std::vector<double> all(months, 0);
  for (const Part& part : parts) {
    for (std::size_t m = 0; m < months; ++m) all[m] += part.values[m];
  }
  return all;
}

}  // namespace wattweek::chart
