// Where curves cross: made-up curves whose crossings are known.

#include "decide/crossings.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

using namespace wattweek::decide;

namespace {

using Curve = std::function<double(double)>;

std::vector<double> evenly(double low, double high, int points) {
  std::vector<double> values;
  for (int i = 0; i + 1 < points; ++i) values.push_back(low + (high - low) * i / (points - 1));
  values.push_back(high);
  return values;
}

std::vector<Crossing> crossings_of(const std::vector<Curve>& curves,
                                   const std::vector<double>& values) {
  std::vector<double> criteria(curves.size());
  const auto at = [&](double value) -> const std::vector<double>& {
    for (std::size_t c = 0; c < curves.size(); ++c) criteria[c] = curves[c](value);
    return criteria;
  };
  return find_crossings(at, values);
}

/// Of a curve with a flat one, both on top of 100.
std::vector<double> roots(const Curve& difference, const std::vector<double>& values) {
  std::vector<double> at;
  for (const Crossing& crossing : crossings_of(
           {[&](double x) { return 100 + difference(x); }, [](double) { return 100.0; }}, values)) {
    CHECK(crossing.first == 0);
    CHECK(crossing.second == 1);
    at.push_back(crossing.at);
  }
  return at;
}

bool are(const std::vector<double>& got, const std::vector<double>& want, double allowed = 1e-9) {
  return std::equal(got.begin(), got.end(), want.begin(), want.end(),
                    [allowed](double a, double b) { return std::fabs(a - b) <= allowed; });
}

const std::vector<double> kFine = evenly(0, 1, 1025);
const std::vector<double> kCoarse = evenly(0, 10, 11);

}  // namespace

TEST_CASE("two lines cross once, to nine places and beyond") {
  CHECK(are(roots([](double x) { return 3 * (x - 0.7310585786); }, kFine), {0.7310585786}, 1e-12));
  CHECK(are(roots([](double x) { return -40 * (x - 0.001); }, kFine), {0.001}, 1e-12));
  CHECK(are(roots([](double x) { return x - 0.5; }, kFine), {0.5}, 1e-12));  // At a value.
  CHECK(are(roots([](double x) { return x - 5.3; }, {0, 10}), {5.3}, 1e-12));
  CHECK(roots([](double x) { return x + 1; }, kFine).empty());
}

TEST_CASE("bends and steps do not keep a crossing from being found") {
  CHECK(are(roots([](double x) { return x < 3.3 ? -1 : 7 * (x - 3.3) - 1; }, kCoarse),
            {3.3 + 1.0 / 7}));
  CHECK(are(roots([](double x) { return x < 6.25 ? -2.0 : 5.0; }, kCoarse), {6.25}));
  CHECK(are(roots([](double x) { return std::exp(x) - 20; }, kCoarse), {std::log(20)}));
}

TEST_CASE("two crossings between two values that were looked at are both found") {
  const auto pair = [](double a, double b) {
    return [a, b](double x) { return (x - a) * (x - b); };
  };
  CHECK(are(roots(pair(3.4, 3.6), kCoarse), {3.4, 3.6}));
  CHECK(are(roots(pair(3.05, 3.15), kCoarse), {3.05, 3.15}));
  CHECK(are(roots(pair(7.7, 7.95), kCoarse), {7.7, 7.95}));
  CHECK(are(roots([&](double x) { return -pair(3.4, 3.6)(x); }, kCoarse), {3.4, 3.6}));
  // A notch of straight lines, as bills with a minimum have.
  CHECK(are(roots([](double x) { return std::fabs(x - 4.5) - 0.25; }, kCoarse), {4.25, 4.75}));
}

TEST_CASE("two crossings beside an end of the sweep are both found") {
  const auto pair = [](double a, double b) {
    return [a, b](double x) { return (x - a) * (x - b); };
  };
  CHECK(are(roots(pair(0.1, 0.4), kCoarse), {0.1, 0.4}));
  CHECK(are(roots(pair(9.6, 9.9), kCoarse), {9.6, 9.9}));
  CHECK(are(roots([&](double x) { return 1e6 * pair(0.00002, 0.0001)(x); }, kFine),
            {0.00002, 0.0001}));
  CHECK(are(roots(pair(4, 6), {0, 5, 10}), {4, 6}));
}

TEST_CASE("curves that touch and part again do not cross") {
  CHECK(roots([](double x) { return (x - 3.5) * (x - 3.5); }, kCoarse).empty());
  CHECK(roots([](double x) { return -(x - 3) * (x - 3); }, kCoarse).empty());  // At a value.
  CHECK(roots([](double x) { return std::fabs(x - 0.3141); }, kFine).empty());
  // Along an interval, be it looked at or not.
  CHECK(roots([](double x) { return std::max(0.0, std::fabs(x - 5) - 2); }, kCoarse).empty());
  CHECK(roots([](double x) { return std::max(0.0, std::fabs(x - 5.5) - 0.2); }, kCoarse).empty());
  // What rounding leaves below 0 is no change of sign either.
  CHECK(roots([](double x) { return (x - 3.5) * (x - 3.5) - 1e-13; }, kCoarse).empty());
}

TEST_CASE("an interval of equality with a change of sign counts at its lower end") {
  const auto step = [](double from, double to) {
    return [from, to](double x) { return x < from ? x - from : x > to ? x - to : 0.0; };
  };
  CHECK(are(roots(step(0.3, 0.7), kFine), {0.3}));
  CHECK(are(roots(step(0.25, 0.5), kFine), {0.25}));  // Begins at a value.
  CHECK(are(roots(step(3.2, 3.8), kCoarse), {3.2}));  // Between two values.
  CHECK(are(roots(step(2.9, 3.1), kCoarse), {2.9}));  // Around one value.
  CHECK(are(roots(step(3.00001, 7), kCoarse), {3.00001}));
  CHECK(are(roots([&](double x) { return -step(0.3, 0.7)(x); }, kFine), {0.3}));
}

TEST_CASE("equality at an end of the sweep counts") {
  CHECK(are(roots([](double x) { return x; }, kFine), {0}));
  CHECK(are(roots([](double x) { return x - 1; }, kFine), {1}));
  CHECK(are(roots([](double x) { return x * (x - 1); }, kFine), {0, 1}));
  CHECK(are(roots([](double x) { return std::max(0.0, x - 0.4); }, kFine), {0}));
  CHECK(are(roots([](double x) { return std::min(0.0, x - 0.4); }, kFine), {0.4}));
  CHECK(are(roots([](double x) { return std::min(0.0, x - 9.5); }, kCoarse), {9.5}));
}

TEST_CASE("curves that are the same all along count once, at the lower end") {
  CHECK(are(roots([](double) { return 0.0; }, kFine), {0}));
  // But for rounding.
  CHECK(are(roots([](double x) { return 1e-13 * std::sin(1e4 * x); }, kFine), {0}));
}

TEST_CASE("a crossing at a small angle, or in a narrow sweep, is as exact as any other") {
  // From one value to the next the two differ by less than what counts as equal.
  CHECK(are(roots([](double x) { return 1e-4 * (x - 0.6180339887); }, kFine), {0.6180339887}));
  CHECK(are(roots([](double x) { return 1e-4 * (x - 0.0002); }, kFine), {0.0002}));
  CHECK(are(roots([](double x) { return 1e-4 * (x - 0.99971); }, kFine), {0.99971}));
  const double at = 1.0000000123;
  CHECK(are(roots([at](double x) { return 30 * (x - at); }, evenly(1 - 1e-7, 1 + 1e-7, 1025)), {at},
            1e-12));
}

TEST_CASE("every pair has its crossings, by place and then in the file's order") {
  // 1 + x, 2 and 4 - x, and the third's twin.
  const std::vector<Crossing> got =
      crossings_of({[](double x) { return 1 + x; }, [](double) { return 2.0; },
                    [](double x) { return 4 - x; }, [](double x) { return 4 - x; }},
                   evenly(0, 4, 9));
  struct Want {
    std::size_t first, second;
    double at;
  };
  const std::vector<Want> want = {{2, 3, 0},   {0, 1, 1}, {0, 2, 1.5},
                                  {0, 3, 1.5}, {1, 2, 2}, {1, 3, 2}};
  REQUIRE(got.size() == want.size());
  for (std::size_t i = 0; i < want.size(); ++i) {
    CHECK(got[i].first == want[i].first);
    CHECK(got[i].second == want[i].second);
    CHECK(std::fabs(got[i].at - want[i].at) < 1e-12);
  }
}

TEST_CASE("one curve alone crosses nothing") {
  CHECK(crossings_of({[](double x) { return x; }}, kFine).empty());
}

TEST_CASE("amounts below 0 and around 0 cross as well") {
  const std::vector<Crossing> got = crossings_of(
      {[](double x) { return -50 - x; }, [](double x) { return -53 + x; }}, evenly(0, 4, 1025));
  REQUIRE(got.size() == 1);
  CHECK(std::fabs(got[0].at - 1.5) < 1e-12);
  const std::vector<Crossing> around = crossings_of(
      {[](double x) { return x - 1.1; }, [](double x) { return 1.1 - x; }}, evenly(0, 4, 1025));
  REQUIRE(around.size() == 1);
  CHECK(std::fabs(around[0].at - 1.1) < 1e-12);
}
