#include "cli/draws.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <limits>
#include <thread>

#include "wattweek/decide/ranking.hpp"

namespace wattweek::cli {
namespace {

constexpr int kMostThreads = 256;

}  // namespace

std::variant<unsigned, Misuse> threads_of(const Arguments& arguments) {
  const auto text = arguments.value("threads");
  if (!text) return std::clamp(std::thread::hardware_concurrency(), 1U, 256U);
  const auto threads = whole_number("threads", *text, 1, kMostThreads);
  if (const auto* misuse = std::get_if<Misuse>(&threads)) return *misuse;
  return static_cast<unsigned>(std::get<int>(threads));
}

std::optional<Misuse> without_criterion(std::string_view what, const model::Study& study) {
  if (decide::criterion_of(study) != decide::Criterion::none) return std::nullopt;
  return Misuse{
      fmt::format("{}: the purchases differ, so which candidate is best depends on how long it is "
                  "kept; expected years under [finance] in {}, or --years N",
                  what, *study.candidates.front().place.file)};
}

std::optional<decide::DrawOptions> unasked_draws(const read::StudyInput& input, unsigned threads) {
  const std::size_t draws = decide::unasked_draws(input.study, input.zone);
  if (draws == 0) return std::nullopt;
  return decide::DrawOptions{draws, 1, threads};
}

std::variant<std::optional<decide::DrawOptions>, Misuse> draws_of(const model::Study& study,
                                                                  const Arguments& arguments) {
  const auto text = arguments.value("draws");
  if (!text) {
    for (const std::string_view option : {"seed", "threads"}) {
      if (arguments.has(option)) return Misuse{fmt::format("--{}: goes with --draws", option)};
    }
    return std::nullopt;
  }
  const auto draws = whole_number("draws", *text, static_cast<int>(decide::kFewestDraws),
                                  static_cast<int>(decide::kMostDraws));
  if (const auto* misuse = std::get_if<Misuse>(&draws)) return *misuse;
  const auto seed = whole_number("seed", arguments.value("seed").value_or("1"), 0,
                                 std::numeric_limits<int>::max());
  if (const auto* misuse = std::get_if<Misuse>(&seed)) return *misuse;
  const auto threads = threads_of(arguments);
  if (const auto* misuse = std::get_if<Misuse>(&threads)) return *misuse;
  if (auto misuse = without_criterion("--draws", study)) return *misuse;
  return decide::DrawOptions{static_cast<std::size_t>(std::get<int>(draws)),
                             static_cast<std::uint64_t>(std::get<int>(seed)),
                             std::get<unsigned>(threads)};
}

}  // namespace wattweek::cli
