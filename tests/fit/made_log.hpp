#pragma once
// Logs by chance, as texts, of a home whose truth is known: idle watts, what uses add, the year.
// Uses begin and end at any second, also in the middle of a step; the noise fades slowly; readings
// are to whole steps; rows are missing, and counters begin anew.

#include <cstdint>
#include <string>
#include <vector>

#include "wattweek/logs/log.hpp"

namespace wattweek::tests {

/// What a home is like, and how it is metered.
struct MadeSort {
  logs::Kind kind = logs::Kind::power;
  double step_s = 60;
  int days = 7;
  double quantum = 0.1;  ///< W, or Wh.
  double noise_w = 0.3;  ///< Standard deviation.
  double memory_s = 60;  ///< After so long a time noise has faded to 1/e.
  double least_increment_w = 1;
  bool carries_rest = false;  ///< Of energies: what a step leaves out is in the next one.
};

struct MadeLog {
  std::string log;       ///< `2025-01-06T00:00:00Z,30.2`, with headings.
  std::string activity;  ///< Workloads `films`, up to two units, and `backup`.
  double idle_w = 0;
  double films_w = 0;
  double backup_w = 0;
  /// What is expected of a year of such days.
  double year_kwh = 0;
};

/// The same seed, the same log.
MadeLog made_log(const MadeSort& sort, std::uint64_t seed);

}  // namespace wattweek::tests
