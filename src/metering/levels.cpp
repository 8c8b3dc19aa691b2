#include "wattweek/metering/levels.hpp"

#include <algorithm>
#include <iterator>

#include "level_edges.hpp"

namespace wattweek::metering {

namespace {

// Of the rules that levels.hpp states.
constexpr double kMostAsleep_w = 10;
constexpr double kLeastWakeRatio = 4;
constexpr double kLeastStretch_s = 600;
constexpr double kLeastIdlePart = 0.05;

Level level_between(const Histogram& histogram, std::size_t from, std::size_t to) {
  Drawn drawn;
  for (std::size_t bin = from; bin < to; ++bin) {
    drawn.seconds += histogram[bin].seconds;
    drawn.joules += histogram[bin].joules;
  }
  return {State::active, drawn.seconds > 0 ? drawn.mean_w() : lower_w(from), drawn.seconds / 3600,
          lower_w(from), lower_w(to)};
}

// Between each two neighbouring edges.
std::vector<Level> levels_between(const Histogram& histogram,
                                  const std::vector<std::size_t>& edges) {
  std::vector<Level> levels;
  for (std::size_t i = 0; i + 1 < edges.size(); ++i) {
    levels.push_back(level_between(histogram, edges[i], edges[i + 1]));
  }
  return levels;
}

// Half of the time with watts in [from_w, to_w) is spent in stretches of this length or longer. A
// cell counts whole, where at least half of it lies in them; holes are passed over.
double typical_stretch_s(const std::vector<Parcel>& parcels, double from_w, double to_w) {
  std::vector<double> stretches = {0};
  for (auto parcel = parcels.begin(); parcel != parcels.end();) {
    double inside_s = 0;
    double all_s = 0;
    for (const std::int32_t minute = parcel->minute;
         parcel != parcels.end() && parcel->minute == minute; ++parcel) {
      const double mean_w = parcel->drawn.seconds > 0 ? parcel->drawn.mean_w() : to_w;
      all_s += parcel->drawn.seconds;
      if (mean_w >= from_w && mean_w < to_w) inside_s += parcel->drawn.seconds;
    }
    if (inside_s * 2 >= all_s) {
      stretches.back() += inside_s;
    } else if (stretches.back() > 0) {
      stretches.push_back(0);
    }
  }
  std::sort(stretches.begin(), stretches.end());
  double all_s = 0;
  for (const double stretch_s : stretches) all_s += stretch_s;
  double so_far_s = 0;
  for (const double stretch_s : stretches) {
    so_far_s += stretch_s;
    if (so_far_s * 2 >= all_s) return stretch_s;
  }
  return 0;
}

bool sleeps(const Level& level, const Level& above, const Measured& measured) {
  if (level.watts > kMostAsleep_w || level.watts * kLeastWakeRatio >= above.watts) return false;
  const double highest_w = lower_w(measured.histogram.size());
  return typical_stretch_s(measured.parcels, level.from_w, level.to_w) >= kLeastStretch_s &&
         typical_stretch_s(measured.parcels, level.to_w, highest_w) >= kLeastStretch_s;
}

// How many of the levels are rest: off, then asleep. Names them.
std::size_t name_rest(std::vector<Level>& levels, const Measured& measured) {
  std::size_t rest = 0;
  if (!levels.empty() && levels[0].watts <= kMostOff_w) levels[rest++].state = State::off;
  if (rest + 1 < levels.size() && sleeps(levels[rest], levels[rest + 1], measured)) {
    levels[rest++].state = State::sleep;
  }
  return rest;
}

// The lowest of the awake levels that has enough of their time.
std::size_t idle_among(const std::vector<Level>& levels, std::size_t rest) {
  double awake_hours = 0;
  for (std::size_t i = rest; i < levels.size(); ++i) awake_hours += levels[i].hours;
  std::size_t idle = rest;
  while (idle + 1 < levels.size() && levels[idle].hours < kLeastIdlePart * awake_hours) ++idle;
  return idle;
}

// Rest and wake part at an edge of a watt class, if one lies between the two means: so that parcels
// fall on one side.
std::size_t class_edge(std::size_t edge, const Level& below, const Level& above) {
  const std::size_t down = edge / kBinsOfClass * kBinsOfClass;
  const std::size_t up = down + kBinsOfClass;
  const bool may_down = down > bin_of(below.watts);
  const bool may_up = up <= bin_of(above.watts);
  if (may_down && (edge - down <= up - edge || !may_up)) return down;
  return may_up ? up : edge;
}

}  // namespace

std::vector<Level> levels_of(const Measured& measured) {
  const Histogram& histogram = measured.histogram;
  std::vector<std::size_t> edges = level_edges(histogram, measured.resolution_w);
  std::vector<Level> levels = levels_between(histogram, edges);
  const std::size_t rest = name_rest(levels, measured);
  if (rest == levels.size()) return levels;
  const auto first = edges.begin() + static_cast<std::ptrdiff_t>(rest);
  const auto idle = static_cast<std::ptrdiff_t>(idle_among(levels, rest) - rest);
  edges.erase(first + 1, first + 1 + idle);
  if (rest > 0) edges[rest] = class_edge(edges[rest], levels[rest - 1], levels[rest]);
  std::vector<Level> named = levels_between(histogram, edges);
  for (std::size_t i = 0; i < rest; ++i) named[i].state = levels[i].state;
  named[rest].state = State::idle;
  return named;
}

std::optional<double> awake_from_w(const std::vector<Level>& levels) {
  for (const Level& level : levels) {
    if (level.state == State::idle || level.state == State::active) return level.from_w;
  }
  return std::nullopt;
}

bool lies_in(const Parcel& parcel, const Level& level) {
  if (!(parcel.drawn.seconds > 0)) return false;
  const double mean_w = parcel.drawn.mean_w();
  return mean_w >= level.from_w && mean_w < level.to_w;
}

}  // namespace wattweek::metering
