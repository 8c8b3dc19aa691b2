#pragma once
// The load-duration curve: for how many hours of a study a machine draws at least so much.

#include <string>
#include <vector>

#include "wattweek/chart/frame.hpp"

namespace wattweek::chart {

/// So many hours at so many watts, of a study of any length.
struct Load {
  double watts = 0;
  double hours = 0;
};

/// One candidate's loads, in any order; the same watts may occur several times.
struct LoadCurve {
  std::string name;
  std::vector<Load> loads;
};

/// Load-duration curves in one pair of axes.
struct LoadDuration {
  Frame frame;
  std::vector<LoadCurve> curves;
};

/// Draws each curve as falling steps: the height over an hour x is what the machine draws or
/// exceeds in x hours of the study, so the area below is its energy. Both axes begin at zero. A
/// curve that is alone is filled; names stand as in `svg(const Lines&)`.
/// \pre finite, not negative.
std::string svg(const LoadDuration& picture);

}  // namespace wattweek::chart
