// Points that fill the unit cube evenly.

#include "decide/points.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <random>
#include <set>

using namespace wattweek::decide;

namespace {

using Point = std::vector<double>;

std::vector<Point> points_of(std::size_t dimensions, std::uint64_t seed, std::size_t first,
                             std::size_t count) {
  Points points(dimensions, seed, first);
  std::vector<Point> all(count);
  for (Point& point : all) points.next(point);
  return all;
}

/// How many of the intervals of a coordinate's unit interval, cut into as many as there are
/// points, hold a point.
std::size_t intervals_hit(const std::vector<Point>& points, std::size_t dimension) {
  std::set<std::size_t> hit;
  for (const Point& point : points) {
    hit.insert(static_cast<std::size_t>(point[dimension] * static_cast<double>(points.size())));
  }
  return hit.size();
}

}  // namespace

TEST_CASE("scrambling is one-to-one, digit by digit from the first") {
  // Two numbers that agree in their first k digits and differ in the next agree in as many
  // afterwards: a map with that property keeps every dyadic interval whole, and is one-to-one.
  std::uint32_t x = 12345;
  for (int pair = 0; pair < 20000; ++pair) {
    x = x * 1664525U + 1013904223U;
    const std::uint32_t seed = x * 2654435761U;
    for (int digit = 0; digit < 32; digit += 1 + pair % 5) {
      const std::uint32_t first_difference = 0x80000000U >> digit;
      const std::uint32_t noise = (x * 7919U) & (first_difference - 1);
      const std::uint32_t y = (x ^ first_difference) ^ noise;
      const std::uint32_t difference = scrambled(x, seed) ^ scrambled(y, seed);
      REQUIRE((difference & first_difference) != 0);
      REQUIRE(difference < 2ULL * first_difference);
    }
  }
}

TEST_CASE("scrambling flips every digit about as often as not") {
  std::vector<int> flipped(32);
  constexpr int kSeeds = 4000;
  for (std::uint32_t seed = 0; seed < kSeeds; ++seed) {
    const std::uint32_t digits = 0x9abcdef0U;
    const std::uint32_t changed = scrambled(digits, seed * 2654435761U + 17) ^ digits;
    for (std::size_t d = 0; d < 32; ++d) flipped[d] += (changed >> d) % 2 == 1 ? 1 : 0;
  }
  // Binomial with sd 31.6: five of them.
  for (const int times : flipped) CHECK(std::abs(times - kSeeds / 2) < 160);
}

TEST_CASE("the first 2^m points hit each of 2^m intervals once, in every dimension") {
  for (const std::uint64_t seed : {1U, 2U, 99U}) {
    for (const std::size_t count : {1U, 2U, 4U, 64U, 1024U}) {
      const std::vector<Point> points = points_of(40, seed, 0, count);
      std::size_t fewest = count;
      for (std::size_t d = 0; d < 40; ++d) fewest = std::min(fewest, intervals_hit(points, d));
      CHECK(fewest == count);
    }
  }
}

TEST_CASE("so does every later run of 2^m points that begins at a multiple of it") {
  const std::vector<Point> points = points_of(12, 5, 3 * 256, 256);
  for (std::size_t d = 0; d < 12; ++d) CHECK(intervals_hit(points, d) == 256);
}

TEST_CASE("in the first two dimensions, 2^m points hit each of 2^m boxes of any shape once") {
  // The first two Sobol' dimensions are a (0, m, 2)-net, and scrambling keeps it one.
  const std::vector<Point> points = points_of(2, 3, 0, 256);
  for (int wide = 0; wide <= 8; ++wide) {
    std::set<std::pair<int, int>> hit;
    for (const Point& point : points) {
      hit.insert({static_cast<int>(std::ldexp(point[0], wide)),
                  static_cast<int>(std::ldexp(point[1], 8 - wide))});
    }
    CHECK(hit.size() == 256);
  }
}

TEST_CASE("wherever one begins, the points are the same") {
  for (const std::size_t dimensions : {1U, 3U, 3667U, 3670U}) {
    const std::vector<Point> all = points_of(dimensions, 8, 0, 40);
    for (const std::size_t first : {1U, 2U, 7U, 31U, 32U, 39U}) {
      CAPTURE(first);
      CHECK(points_of(dimensions, 8, first, 1)[0] == all[first]);
    }
    CHECK(points_of(dimensions, 8, 5, 20)[19] == all[24]);
  }
}

TEST_CASE("coordinates lie within 0 and 1, and their means are near the middle") {
  constexpr std::size_t kCount = 4096;
  std::vector<double> sums(3800, 0.0);
  Points points(sums.size(), 1, 0);
  Point point;
  bool inside = true;
  for (std::size_t n = 0; n < kCount; ++n) {
    points.next(point);
    REQUIRE(point.size() == sums.size());
    for (std::size_t d = 0; d < sums.size(); ++d) {
      inside = inside && point[d] > 0 && point[d] < 1;
      sums[d] += point[d];
    }
  }
  CHECK(inside);
  // One point in each of N intervals: the mean is within half an interval of 1/2. Beyond the
  // sequence's dimensions the numbers are independent: sd 1 / sqrt(12 N) = 0.0045, five of them.
  std::size_t off = 0;
  for (std::size_t d = 0; d < sums.size(); ++d) {
    const double allowed = d < 3667 ? 0.5 / kCount : 0.0226;
    if (std::fabs(sums[d] / kCount - 0.5) > allowed) ++off;
  }
  CHECK(off == 0);
}

TEST_CASE("numbers beyond the sequence's dimensions are not each other's copies") {
  const std::vector<Point> points = points_of(3680, 1, 0, 2000);
  for (std::size_t d = 3667; d + 1 < 3680; ++d) {
    double product = 0;
    for (const Point& point : points) product += (point[d] - 0.5) * (point[d + 1] - 0.5);
    // sd of the mean product: 1 / (12 sqrt(N)) = 0.00186, five of them.
    CHECK(std::fabs(product / 2000) < 0.0094);
  }
}

TEST_CASE("another seed, other points") {
  CHECK(points_of(3, 1, 0, 8) == points_of(3, 1, 0, 8));
  CHECK(points_of(3, 1, 0, 8) != points_of(3, 2, 0, 8));
  CHECK(points_of(1, 1, 0, 1)[0] != points_of(1, 0xffffffffffffffffU, 0, 1)[0]);
}

TEST_CASE("a study without ranges has points without coordinates") {
  CHECK(points_of(0, 1, 0, 3) == std::vector<Point>(3));
  CHECK(points_of(0, 1, 1000, 1)[0].empty());
}

// The shape of what is drawn: a price times watts that add, and a bend where two meet.
double cost_like(const Point& point) {
  double watts = 10;
  for (std::size_t d = 1; d < point.size(); ++d) watts += point[d] / static_cast<double>(d);
  return (0.8 + 0.4 * point[0]) * watts + std::max(0.0, point[1] + point[2] - 1);
}

double mean_of_costs(const std::vector<Point>& points) {
  double sum = 0;
  for (const Point& point : points) sum += cost_like(point);
  return sum / static_cast<double>(points.size());
}

TEST_CASE("a mean over even points is a tenth as far off as one over independent numbers") {
  constexpr std::size_t kRanges = 14;
  constexpr std::size_t kDraws = 1024;
  double exact = 10.0 + 1.0 / 6;  // E max(0, a + b - 1) of two uniform numbers is 1/6.
  for (std::size_t d = 1; d < kRanges; ++d) exact += 0.5 / static_cast<double>(d);
  double even = 0;
  double independent = 0;
  std::mt19937_64 numbers(7);
  std::uniform_real_distribution<double> uniform;
  for (std::uint64_t seed = 1; seed <= 16; ++seed) {
    even += std::pow(mean_of_costs(points_of(kRanges, seed, 0, kDraws)) - exact, 2);
    std::vector<Point> plain(kDraws, Point(kRanges));
    for (Point& point : plain) {
      for (double& coordinate : point) coordinate = uniform(numbers);
    }
    independent += std::pow(mean_of_costs(plain) - exact, 2);
  }
  CHECK(std::sqrt(even) < 0.1 * std::sqrt(independent));
}
