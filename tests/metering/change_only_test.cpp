// Logs that hold a row only when the value moved: no gap applies to them.

#include <doctest/doctest.h>

#include <cmath>
#include <functional>
#include <random>

#include "logs.hpp"

namespace wattweek::tests {
namespace {

using doctest::Approx;

/// A device as a plug sees it each second, in tenths of a watt: `noise_w` about a mean.
class Plug {
 public:
  explicit Plug(double noise_w) : noise_(0, noise_w) {}
  double at_mean(double mean_w) {
    return std::round(std::max(0.0, mean_w + noise_(chance_)) * 10) / 10;
  }
  double even(double from, double to) {
    return std::uniform_real_distribution<double>(from, to)(chance_);
  }

 private:
  std::mt19937_64 chance_{3};
  std::normal_distribution<double> noise_;
};

/// All rows of 4 hours, `step_s()` apart.
std::vector<At> all_rows(Plug& plug, const std::function<double()>& step_s) {
  std::vector<At> rows;
  for (double s = 0; s < 4 * 3600; s += step_s()) rows.push_back({s, plug.at_mean(30)});
  return rows;
}

/// Of these rows those that differ from the one kept before by more than `deadband_w`.
std::vector<At> changes(const std::vector<At>& rows, double deadband_w) {
  std::vector<At> kept;
  for (const At& row : rows) {
    if (kept.empty() || std::abs(row.value - kept.back().value) > deadband_w) kept.push_back(row);
  }
  return kept;
}

bool change_only(const std::vector<At>& rows) {
  return measured(log_of(rows), kPower).coverage.change_only;
}

TEST_CASE("22 h at 12 W without a new row and 2 h at 30 W with many are 13.5 W") {
  std::vector<At> rows{{0, 12}};
  double watts = 30.4;
  for (double s = 22 * 3600; s < 24 * 3600; s += std::fmod(s, 97) + 7) {
    rows.push_back({s, watts});
    watts = watts > 30 ? 29.6 : 30.4;
  }
  rows.push_back({24 * 3600, 12});
  const auto got = measured(log_of(rows), kPower);
  CHECK(got.coverage.change_only);
  CHECK(std::isinf(got.coverage.gap_s));
  CHECK(got.measured.kept.mean_w() == Approx(13.5).epsilon(0.002));
  CHECK(got.coverage.longest_step_s == 22 * 3600);
  CHECK(got.coverage.longest_step_at_us == monday_plus(0));
  CHECK(got.coverage.dropped_hours == 0);

  const auto overruled = measured(log_of(rows), kPower, {{}, 300.0, {}});
  CHECK(overruled.coverage.change_only);
  CHECK(overruled.coverage.gap_s == 300);
  CHECK(overruled.measured.kept.mean_w() == Approx(30).epsilon(0.005));
}

TEST_CASE("the rows in which a sampled value moved make a log of changes") {
  Plug plug(0.3);
  const auto rows = all_rows(plug, [] { return 1.0; });
  CHECK_FALSE(change_only(rows));
  CHECK(change_only(changes(rows, 0.55)));
}

TEST_CASE("22 h at 12 W without a new row are found beside rows that never show a value twice") {
  Plug plug(1e-6);
  std::vector<At> rows{{0, 12}};
  for (double s = 22 * 3600; s < 24 * 3600; s += std::floor(plug.even(5, 16))) {
    rows.push_back({s, plug.even(29, 31)});
  }
  rows.push_back({24 * 3600, 12});
  CHECK(measured(log_of(rows), kPower).measured.kept.mean_w() == Approx(13.5).epsilon(0.002));
}

TEST_CASE("changes on the beat of a plug's sampling make a log of changes") {
  // Three in four rows differ from the one before: most steps are the 10 s of the sampling.
  Plug plug(0.15);
  const auto rows = all_rows(plug, [] { return 10.0; });
  CHECK_FALSE(change_only(rows));
  CHECK(change_only(changes(rows, 0)));
}

TEST_CASE("a noisy log of all rows keeps its gap however much its poll trembles") {
  Plug plug(3);  // Fewer than one pair in twenty is equal.
  CHECK_FALSE(change_only(all_rows(plug, [] { return 6.0; })));
  CHECK_FALSE(change_only(all_rows(plug, [&] { return plug.even(5, 7); })));
  CHECK_FALSE(change_only(all_rows(plug, [&] { return plug.even(7, 13); })));
}

TEST_CASE("a noisy log of all rows with holes keeps its gap") {
  Plug plug(3);
  auto rows = all_rows(plug, [&] { return plug.even(5, 7); });
  for (At& row : rows) row.s += std::floor(row.s / 1000) * 2000;
  const auto got = measured(log_of(rows), kPower).coverage;
  CHECK_FALSE(got.change_only);
  CHECK(got.gap_s == 300);
  CHECK(got.dropped_hours == Approx(14 * 2000 / 3600.0).epsilon(0.01));
  // One row in three lost on the way.
  CHECK_FALSE(change_only(all_rows(plug, [&] { return plug.even(0, 3) < 1 ? 20.0 : 10.0; })));
}

TEST_CASE("rows in which neighbours are equal are no log of changes") {
  std::vector<At> rows;
  Plug plug(1e-6);
  for (double s = 0; s < 7200; s += plug.even(1, 120)) rows.push_back({s, plug.at_mean(12)});
  CHECK_FALSE(change_only(rows));
}

TEST_CASE("a log of changes may repeat a value now and then as a sign of life") {
  Plug plug(2);
  auto rows = changes(all_rows(plug, [&] { return plug.even(1, 40); }), 1);
  for (int h = 5; h < 11; ++h) rows.push_back({h * 3600.0, 12});
  CHECK(change_only(rows));
}

TEST_CASE("three steps are too few to call a log one of changes") {
  CHECK_FALSE(change_only({{0, 1}, {10, 2}, {500, 3}, {9000, 4}}));
}

}  // namespace
}  // namespace wattweek::tests
