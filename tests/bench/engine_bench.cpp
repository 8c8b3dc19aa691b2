// How long each room takes on a study of three set-ups and eight services.

#include <benchmark/benchmark.h>

#include <cstdlib>
#include <fstream>
#include <iostream>
#include <sstream>

#include "wattweek/calendar/study_fold.hpp"
#include "wattweek/decide/assessment.hpp"
#include "wattweek/energy/ledger.hpp"
#include "wattweek/power/device_law.hpp"
#include "wattweek/read/read.hpp"
#include "wattweek/report/report.hpp"

namespace {

using namespace wattweek;

read::SourceText study_text() {
  const std::string path = WATTWEEK_SOURCE_DIR "/tests/bench/eight-services.toml";
  std::ostringstream text;
  text << std::ifstream(path).rdbuf();
  return {path, path, text.str()};
}

read::Surroundings no_files() {
  return {[](const std::string&, const std::string&, read::ShippedKind) {
            return read::Unreadable{"there are no files here"};
          },
          [](const std::string& name, std::chrono::year_month first, int months) {
            return calendar::zone_rules(name, first, months);
          }};
}

read::StudyInput read_input() {
  auto got = read::study(study_text(), no_files());
  for (const auto& problem : got.problems) std::cerr << diag::to_text(problem) << '\n';
  if (!got.value) std::exit(2);
  return std::move(*got.value);
}

const read::StudyInput& input() {
  static const read::StudyInput read_once = read_input();
  return read_once;
}

void read_a_study(benchmark::State& state) {
  const read::SourceText text = study_text();
  for (auto _ : state) benchmark::DoNotOptimize(read::study(text, no_files()));
}
BENCHMARK(read_a_study)->Unit(benchmark::kMicrosecond);

// By months: linear in days.
void fold_a_study(benchmark::State& state) {
  model::Study study = input().study;
  study.months = static_cast<int>(state.range(0));
  const auto zone = calendar::zone_rules(study.time_zone, study.start, study.months);
  const auto& rules = std::get<calendar::ZoneRules>(zone);
  for (auto _ : state) benchmark::DoNotOptimize(calendar::fold_study(study, rules));
}
BENCHMARK(fold_a_study)->Arg(12)->Arg(24)->Arg(48)->Arg(96)->Unit(benchmark::kMicrosecond);

void plan_a_candidate(benchmark::State& state) {
  const auto folded = calendar::fold_study(input().study, input().zone);
  const auto candidate = static_cast<std::size_t>(state.range(0));
  for (auto _ : state) {
    benchmark::DoNotOptimize(energy::plan_candidate(input().study, candidate, folded));
  }
}
BENCHMARK(plan_a_candidate)->DenseRange(0, 2)->Unit(benchmark::kMicrosecond);

// What a what-if on watts, shares or units repeats.
void reckon_a_candidate_again(benchmark::State& state) {
  const auto folded = calendar::fold_study(input().study, input().zone);
  const auto candidate = static_cast<std::size_t>(state.range(0));
  const auto plan = energy::plan_candidate(input().study, candidate, folded);
  const auto law = power::central_law(input().study, candidate);
  energy::Reckoner reckoner(plan);
  energy::Ledger ledger;
  for (auto _ : state) benchmark::DoNotOptimize(reckoner.reckon(law, ledger));
}
BENCHMARK(reckon_a_candidate_again)->DenseRange(0, 2)->Unit(benchmark::kMicrosecond);

void assess_a_study(benchmark::State& state) {
  for (auto _ : state) benchmark::DoNotOptimize(decide::assess(input().study, input().zone));
}
BENCHMARK(assess_a_study)->Unit(benchmark::kMicrosecond);

void write_json(benchmark::State& state) {
  const auto assessed = decide::assess(input().study, input().zone);
  const auto& result = std::get<decide::Assessment>(assessed);
  for (auto _ : state) {
    benchmark::DoNotOptimize(report::json(input().study, result, report::Scope::compare));
  }
}
BENCHMARK(write_json)->Unit(benchmark::kMicrosecond);

}  // namespace
