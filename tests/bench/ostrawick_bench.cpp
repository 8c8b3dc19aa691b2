// The demo study, reckoned whole and what-if by what-if: what `rivals` holds against other ways
// to the same figures.

#include <benchmark/benchmark.h>

#include <algorithm>
#include <cstdlib>

#include "ostrawick.hpp"
#include "wattweek/decide/assessment.hpp"
#include "wattweek/decide/scenario.hpp"
#include "wattweek/decide/settled_study.hpp"
#include "wattweek/decide/uncertainty.hpp"
#include "wattweek/decide/what_if.hpp"

namespace {

using namespace wattweek;
using bench::ostrawick;
using bench::under_full_contract;

void reckon_ostrawick(benchmark::State& state) {
  const read::StudyInput& input = ostrawick();
  for (auto _ : state) benchmark::DoNotOptimize(decide::assess(input.study, input.zone));
}
BENCHMARK(reckon_ostrawick)->Unit(benchmark::kMicrosecond);

// Energy and bills of all candidates, with other watts, shares and prices each time.
void reckon_a_what_if_of_ostrawick(benchmark::State& state) {
  const decide::ScenarioPlan plan = decide::plan_scenarios(ostrawick().study, ostrawick().zone);
  decide::ScenarioReckoner reckoner(plan);
  decide::SettledStudy settled(ostrawick().study);
  std::vector<decide::Totals> totals;
  std::size_t turn = 0;
  for (auto _ : state) {
    for (std::size_t range = 0; range < settled.keys().size(); ++range) {
      settled.settle(range, static_cast<double>((turn * 7 + range * 13) % 64) / 63);
    }
    if (reckoner.reckon(settled.study(), totals)) std::exit(2);
    benchmark::DoNotOptimize(totals);
    ++turn;
  }
}
BENCHMARK(reckon_a_what_if_of_ostrawick)->Unit(benchmark::kMicrosecond);

// 100,000 draws, by threads.
void draw_ostrawick(benchmark::State& state) {
  const decide::DrawOptions options{100'000, 1, static_cast<unsigned>(state.range(0))};
  for (auto _ : state) {
    benchmark::DoNotOptimize(decide::draw(ostrawick().study, ostrawick().zone, options));
  }
}
BENCHMARK(draw_ostrawick)->Arg(1)->Arg(2)->Unit(benchmark::kMillisecond)->UseRealTime();

// A million points of price and use, by threads; nothing is written.
decide::WhatIf million_points(const read::StudyInput& input, unsigned threads) {
  constexpr std::size_t kPoints = 1000;
  using Kind = decide::Factor::Kind;
  return {input.study,
          input.zone,
          {{{Kind::price, 0}, 0.5, 2, kPoints}, {{Kind::use, 0}, 0.5, 2, kPoints}},
          threads};
}

void prepare(decide::WhatIf& grid) {
  if (!grid.prepare().empty()) std::exit(2);
}

void reckon_rows(decide::WhatIf& grid) {
  constexpr std::size_t kBatch = 65'536;  // As the program does.
  decide::Rows rows;
  for (std::size_t first = 0; first < grid.rows(); first += kBatch) {
    const std::size_t count = std::min(kBatch, grid.rows() - first);
    if (!grid.reckon(first, count, rows).empty()) std::exit(2);
    benchmark::DoNotOptimize(rows);
  }
}

void reckon_grid(benchmark::State& state, const read::StudyInput& input) {
  for (auto _ : state) {
    decide::WhatIf grid = million_points(input, static_cast<unsigned>(state.range(0)));
    prepare(grid);
    reckon_rows(grid);
  }
}

void grid_of_ostrawick(benchmark::State& state) { reckon_grid(state, ostrawick()); }
BENCHMARK(grid_of_ostrawick)->Arg(1)->Arg(2)->Unit(benchmark::kMillisecond)->UseRealTime();

void grid_under_full_contract(benchmark::State& state) {
  reckon_grid(state, under_full_contract());
}
BENCHMARK(grid_under_full_contract)->Arg(1)->Arg(2)->Unit(benchmark::kMillisecond)->UseRealTime();

// The same with the energies already known.
void bills_under_full_contract(benchmark::State& state) {
  decide::WhatIf grid =
      million_points(under_full_contract(), static_cast<unsigned>(state.range(0)));
  prepare(grid);
  for (auto _ : state) reckon_rows(grid);
}
BENCHMARK(bills_under_full_contract)->Arg(1)->Unit(benchmark::kMillisecond)->UseRealTime();

}  // namespace
