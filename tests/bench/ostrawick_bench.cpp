// The demo study, reckoned whole and what-if by what-if: what `rivals` holds against other ways
// to the same figures.

#include <benchmark/benchmark.h>

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <memory>
#include <sstream>

#include "wattweek/calendar/study_fold.hpp"
#include "wattweek/decide/assessment.hpp"
#include "wattweek/energy/ledger.hpp"
#include "wattweek/power/device_law.hpp"
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

// Other idle watts and other shares, never twice the same in a row.
power::CandidateLaw varied(power::CandidateLaw law, double factor) {
  for (power::DeviceLaw& device : law.devices) device.idle_w *= factor;
  for (auto& uses : law.uses) {
    for (power::UseLaw& use : uses) use.share *= factor;
  }
  return law;
}

struct WhatIfs {
  energy::CandidatePlan plan;
  std::vector<power::CandidateLaw> laws;
  energy::Reckoner reckoner{plan};
  energy::Ledger ledger;

  WhatIfs(const model::Study& study, std::size_t candidate, const calendar::FoldedStudy& folded)
      : plan(energy::plan_candidate(study, candidate, folded)) {
    const power::CandidateLaw central = power::central_law(study, candidate);
    for (int i = 0; i < 16; ++i) laws.push_back(varied(central, 1 - 0.01 * i));
  }
};

// Energy and bills of all candidates, with other watts and shares each time.
void reckon_a_what_if_of_ostrawick(benchmark::State& state) {
  const model::Study& study = ostrawick().study;
  const auto folded = calendar::fold_study(study, ostrawick().zone);
  const auto assessed = decide::assess(study, ostrawick().zone);
  const auto& without = std::get<decide::Assessment>(assessed).without;
  std::vector<std::unique_ptr<WhatIfs>> candidates;
  for (std::size_t c = 0; c < study.candidates.size(); ++c) {
    candidates.push_back(std::make_unique<WhatIfs>(study, c, folded));
  }
  std::size_t turn = 0;
  for (auto _ : state) {
    for (auto& each : candidates) {
      if (each->reckoner.reckon(each->laws[turn % 16], each->ledger)) std::exit(2);
      benchmark::DoNotOptimize(billing::candidate_cost(without, each->ledger.kwh));
    }
    ++turn;
  }
}
BENCHMARK(reckon_a_what_if_of_ostrawick)->Unit(benchmark::kMicrosecond);

}  // namespace
