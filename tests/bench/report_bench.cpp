// The demo study's report: what goes into it, and the page itself.

#include <benchmark/benchmark.h>

#include <cstdlib>

#include "ostrawick.hpp"
#include "wattweek/report/page.hpp"

namespace {

using namespace wattweek;
using bench::ostrawick;

// By threads.
void turns_of_ostrawick(benchmark::State& state) {
  for (auto _ : state) {
    benchmark::DoNotOptimize(
        decide::turns(ostrawick().study, ostrawick().zone, static_cast<unsigned>(state.range(0))));
  }
}
BENCHMARK(turns_of_ostrawick)->Arg(1)->Arg(2)->Unit(benchmark::kMillisecond)->UseRealTime();

decide::PriceSweepOptions sweep_options(unsigned threads) {
  decide::PriceSweepOptions options;
  options.draws = 256;
  options.threads = threads;
  return options;
}

// With 256 draws at each level of prices, by threads.
void price_sweep_of_ostrawick(benchmark::State& state) {
  const auto options = sweep_options(static_cast<unsigned>(state.range(0)));
  for (auto _ : state) {
    benchmark::DoNotOptimize(decide::price_sweep(ostrawick().study, ostrawick().zone, options));
  }
}
BENCHMARK(price_sweep_of_ostrawick)->Arg(1)->Arg(2)->Unit(benchmark::kMillisecond)->UseRealTime();

void load_durations_of_ostrawick(benchmark::State& state) {
  for (auto _ : state) {
    benchmark::DoNotOptimize(decide::load_durations(ostrawick().study, ostrawick().zone));
  }
}
BENCHMARK(load_durations_of_ostrawick)->Unit(benchmark::kMicrosecond);

template <class T, class Or>
T must(std::variant<T, Or> result) {
  if (auto* value = std::get_if<T>(&result)) return std::move(*value);
  std::exit(2);
}

// Everything reckoned, laid out as a page.
void page_of_ostrawick(benchmark::State& state) {
  const auto& [study, zone] = ostrawick();
  decide::Assessment assessment = must(decide::assess(study, zone));
  assessment.uncertainty = must(decide::draw(study, zone, {1024, 1, 2}));
  const report::ReportShown shown{study,
                                  assessment,
                                  decide::weeks(study, zone),
                                  decide::load_durations(study, zone),
                                  must(decide::price_sweep(study, zone, sweep_options(2))),
                                  must(decide::turns(study, zone, 2)),
                                  0,
                                  "",
                                  {}};
  for (auto _ : state) benchmark::DoNotOptimize(report::report_page(shown));
}
BENCHMARK(page_of_ostrawick)->Unit(benchmark::kMicrosecond);

}  // namespace
