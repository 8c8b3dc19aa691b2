// How long a year's log takes once it is read: readings into sums.

#include <benchmark/benchmark.h>

#include <algorithm>
#include <array>
#include <cstdint>
#include <span>
#include <vector>

#include "wattweek/metering/measuring.hpp"

namespace {

using namespace wattweek;

constexpr std::int64_t kRows = 31'536'000;
constexpr std::int64_t kBatch = 4096;
constexpr logs::Microseconds kBegin_us = 1'735'689'600'000'000;

enum class Watts { steady, noisy };

/// A year at one reading a second: 30 W give or take one, twice as much in every fourth
/// quarter-hour; steady ones stay the same for most of a minute.
class Year {
 public:
  explicit Year(Watts watts) : watts_(watts) {}

  std::span<const logs::Reading> next(std::int64_t row) {
    const auto many = static_cast<std::size_t>(std::min(kBatch, kRows - row));
    const std::span<logs::Reading> readings{batch_.data(), many};
    for (logs::Reading& into : readings) into = reading(row++);
    return readings;
  }

 private:
  logs::Reading reading(std::int64_t row) {
    chance_ = chance_ * 6364136223846793005U + 1442695040888963407U;
    if (watts_ == Watts::noisy || chance_ >> 58 == 0) tenths_ = 290 + (chance_ >> 33) % 21;
    const double factor = (row >> 10 & 3) == 3 ? 0.2 : 0.1;
    return {kBegin_us + row * 1'000'000, static_cast<double>(tenths_) * factor};
  }

  Watts watts_;
  std::uint64_t chance_ = 1;
  std::uint64_t tenths_ = 300;
  std::array<logs::Reading, kBatch> batch_;
};

/// Three uses an hour, all year.
metering::Activity noted_uses() {
  metering::Activity activity{{"films", "backups"}, {}};
  for (std::int64_t hour = 0; hour < 8760; ++hour) {
    const logs::Microseconds from_us = kBegin_us + hour * 3'600'000'000;
    activity.uses.push_back({0, from_us + 7'000'000, from_us + 900'500'000, 1});
    activity.uses.push_back({0, from_us + 600'000'000, from_us + 1'500'000'000, 1});
    activity.uses.push_back({1, from_us + 1'300'000'000, from_us + 3'000'000'000, 2});
  }
  return activity;
}

void set_time_of_row(benchmark::State& state) {
  state.counters["s_per_row"] =
      benchmark::Counter(static_cast<double>(kRows), benchmark::Counter::kIsIterationInvariantRate |
                                                         benchmark::Counter::kInvert);
}

void measure_a_year(benchmark::State& state, Watts watts, const metering::Activity& activity) {
  const metering::MeasuringOptions options{{std::chrono::seconds{3600}, {}}, {}, activity};
  for (auto _ : state) {
    Year year(watts);
    metering::Measuring measuring(options);
    measuring.begin({});
    for (std::int64_t row = 0; row < kRows; row += kBatch) measuring.take(year.next(row));
    benchmark::DoNotOptimize(measuring.finish());
  }
  set_time_of_row(state);
}
BENCHMARK_CAPTURE(measure_a_year, steady, Watts::steady, {})->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(measure_a_year, noisy, Watts::noisy, {})->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(measure_a_year, with_uses, Watts::noisy, noted_uses())
    ->Unit(benchmark::kMillisecond);

// What of it is not measuring.
void make_up_a_year(benchmark::State& state, Watts watts) {
  for (auto _ : state) {
    Year year(watts);
    for (std::int64_t row = 0; row < kRows; row += kBatch) {
      benchmark::DoNotOptimize(year.next(row).data());
      benchmark::ClobberMemory();
    }
  }
  set_time_of_row(state);
}
BENCHMARK_CAPTURE(make_up_a_year, steady, Watts::steady)->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(make_up_a_year, noisy, Watts::noisy)->Unit(benchmark::kMillisecond);

}  // namespace
