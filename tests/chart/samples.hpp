#pragma once
// Pictures that the tests hold against whole files, and that people look at: small ones, and
// those that a hostile or a very large study would ask for. All figures are invented.

#include <string>
#include <vector>

namespace wattweek::chart {

/// One picture; `golden/NAME.svg` is what it must be.
struct Sample {
  std::string name;
  std::string svg;
};

std::vector<Sample> small_samples();
std::vector<Sample> large_samples();
std::vector<Sample> hostile_samples();

/// All of them.
std::vector<Sample> samples();

}  // namespace wattweek::chart
