#pragma once
// The week as a machine lives it: seven days of 48 half-hours.

#include <array>
#include <optional>
#include <string>

#include "wattweek/chart/axis.hpp"
#include "wattweek/chart/frame.hpp"

namespace wattweek::chart {

/// Mean watts of each half-hour: Monday first, from midnight to midnight by the local clock.
using WeekWatts = std::array<std::array<double, 48>, 7>;

/// A map of the week, a row for each day.
struct WeekMap {
  Frame frame;
  WeekWatts mean_w{};
  /// What the shades reach from and to: set it where several weeks are to be compared. Without
  /// it, the least and the most of this week. Watts beyond are drawn as the last shade.
  std::optional<Range> shades_w;
};

/// Draws each half-hour in one of at most seven shades, which begin and end at round numbers and
/// stand below in a legend; the more watts, the further from the colour of the paper. Under the
/// pointer a day tells its watts in words, from when to when. \pre finite.
std::string svg(const WeekMap& picture);

}  // namespace wattweek::chart
