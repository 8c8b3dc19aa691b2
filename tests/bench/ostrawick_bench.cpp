// The demo study, reckoned whole and what-if by what-if: what `rivals` holds against other ways
// to the same figures.

#include <benchmark/benchmark.h>

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <sstream>

#include "wattweek/decide/assessment.hpp"
#include "wattweek/decide/scenario.hpp"
#include "wattweek/decide/settled_study.hpp"
#include "wattweek/decide/uncertainty.hpp"
#include "wattweek/decide/what_if.hpp"
#include "wattweek/read/read.hpp"

namespace {

using namespace wattweek;

read::SourceText text_of(const std::filesystem::path& path) {
  std::ostringstream text;
  text << std::ifstream(path).rdbuf();
  return {path.string(), path.string(), text.str()};
}

read::StudyInput read_ostrawick() {
  const read::Surroundings beside{
      [](const std::string& path, const std::string& from, read::ShippedKind) {
        return text_of(std::filesystem::path(from).parent_path() / path);
      },
      calendar::zone_rules};
  auto got = read::study(text_of(WATTWEEK_SOURCE_DIR "/docs/examples/ostrawick.toml"), beside);
  for (const auto& problem : got.problems) std::cerr << diag::to_text(problem) << '\n';
  if (!got.value) std::exit(2);
  return std::move(*got.value);
}

const read::StudyInput& ostrawick() {
  static const read::StudyInput read_once = read_ostrawick();
  return read_once;
}

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
void grid_of_ostrawick(benchmark::State& state) {
  constexpr std::size_t kPoints = 1000;
  constexpr std::size_t kBatch = 65'536;
  using Kind = decide::Factor::Kind;
  const std::vector<decide::Sweep> sweeps = {{{Kind::price, 0}, 0.5, 2, kPoints},
                                             {{Kind::use, 0}, 0.5, 2, kPoints}};
  for (auto _ : state) {
    decide::WhatIf grid(ostrawick().study, ostrawick().zone, sweeps,
                        static_cast<unsigned>(state.range(0)));
    if (!grid.prepare().empty()) std::exit(2);
    decide::Rows rows;
    for (std::size_t first = 0; first < grid.rows(); first += kBatch) {
      const std::size_t count = std::min(kBatch, grid.rows() - first);
      if (!grid.reckon(first, count, rows).empty()) std::exit(2);
      benchmark::DoNotOptimize(rows);
    }
  }
}
BENCHMARK(grid_of_ostrawick)->Arg(1)->Arg(2)->Unit(benchmark::kMillisecond)->UseRealTime();

}  // namespace
