// Watts are measured in widths of the kernel, so that one Gaussian of width 1 smooths them all, and
// peaks are sought on an even grid.

#include "level_edges.hpp"

#include <algorithm>
#include <cmath>

namespace wattweek::metering {

namespace {

// Width of the kernel: so many watts, and so much of the watts; at least this part of the
// resolution. Two equal teeth one step apart show as one from half a step on.
constexpr double kKernel_w = 0.05;
constexpr double kKernelPart = 0.01;
constexpr double kKernelSteps = 0.6;

constexpr double kGrid = 0.2;      // Of a width of the kernel.
constexpr double kReach = 5;       // Widths beyond which the kernel is 0.
constexpr double kHighPass = 0.5;  // Of the lower peak: above it, two peaks are one.
constexpr double kLeastPart = 0.005;
constexpr double kLeastTime_s = 600;
constexpr double kShortPart = 0.05;  // A short log is content with this part of its time.
constexpr std::size_t kMostLevels = 8;

// Watts in widths of the kernel there: the integral of 1 / width.
class Widths {
 public:
  explicit Widths(double resolution_w)
      : least_w_(std::max(kKernelSteps * resolution_w, kKernel_w)),
        even_to_w_((least_w_ - kKernel_w) / kKernelPart) {}

  double of(double watts) const {
    if (watts <= even_to_w_) return watts / least_w_;
    const double more = kKernelPart * (watts - even_to_w_) / least_w_;
    return even_to_w_ / least_w_ + std::log1p(more) / kKernelPart;
  }
  double watts(double widths) const {
    const double even = even_to_w_ / least_w_;
    if (widths <= even) return widths * least_w_;
    return even_to_w_ + std::expm1((widths - even) * kKernelPart) * least_w_ / kKernelPart;
  }

 private:
  double least_w_;
  double even_to_w_;  // Up to these watts the kernel is as wide as at 0.
};

// Time by watts on the grid, smoothed. The first point lies kReach below 0 W.
std::vector<double> density_of(const Histogram& histogram, const Widths& widths) {
  const auto reach = static_cast<std::size_t>(kReach / kGrid + 0.5);
  std::vector<double> kernel;
  for (std::size_t i = 0; i <= 2 * reach; ++i) {
    const double away = kGrid * (static_cast<double>(i) - static_cast<double>(reach));
    kernel.push_back(std::exp(-away * away / 2));
  }
  const double end = widths.of(lower_w(histogram.size())) / kGrid;
  std::vector<double> density(static_cast<std::size_t>(end) + 2 + 2 * reach, 0.0);
  const auto add = [&](std::size_t at, double seconds) {
    for (std::size_t i = 0; i < kernel.size(); ++i) density[at + i] += seconds * kernel[i];
  };
  for (const Drawn& drawn : histogram) {
    if (!(drawn.seconds > 0)) continue;
    const double place = widths.of(drawn.mean_w()) / kGrid;
    const auto below = static_cast<std::size_t>(place);
    const double part = place - static_cast<double>(below);
    add(below, drawn.seconds * (1 - part));
    add(below + 1, drawn.seconds * part);
  }
  return density;
}

// A hill of the density: its peak, and the lowest points on either side.
struct Hill {
  double height = 0;
  std::size_t from = 0;  // Its time lies in [from, to).
  std::size_t to = 0;
  double seconds = 0;
};

// The middle of the lowest points in [from, to].
std::size_t lowest_between(const std::vector<double>& density, std::size_t from, std::size_t to) {
  std::size_t first = from;
  std::size_t last = from;
  for (std::size_t i = from; i <= to; ++i) {
    if (density[i] < density[first]) first = i;
    if (density[i] <= density[first]) last = i;
  }
  return first + (last - first) / 2;
}

std::vector<std::size_t> peaks_of(const std::vector<double>& density) {
  std::vector<std::size_t> peaks;
  bool rises = true;
  for (std::size_t i = 0; i < density.size(); ++i) {
    const double next = i + 1 < density.size() ? density[i + 1] : 0;
    if (rises && next < density[i]) peaks.push_back(i);
    if (next != density[i]) rises = next > density[i];
  }
  return peaks;
}

class Hills {
 public:
  explicit Hills(const std::vector<double>& density) : density_(density) {
    const std::vector<std::size_t> peaks = peaks_of(density);
    std::size_t from = 0;
    for (std::size_t i = 0; i < peaks.size(); ++i) {
      const std::size_t to =
          i + 1 < peaks.size() ? lowest_between(density, peaks[i], peaks[i + 1]) : density.size();
      Hill hill{density[peaks[i]], from, to, 0};
      for (std::size_t at = from; at < to; ++at) hill.seconds += density[at];
      seconds_ += hill.seconds;
      hills_.push_back(hill);
      from = to;
    }
  }

  // `least_part` of all time is the least that a hill must hold.
  std::vector<Hill> merged(double least_part) {
    while (hills_.size() > 1) {
      const std::size_t flat = flattest();
      if (prominence(flat) < kHighPass) break;
      merge(flat);
    }
    while (hills_.size() > 1) {
      const std::size_t small = smallest();
      if (hills_[small].seconds >= least_part * seconds_) break;
      merge(small);
    }
    while (hills_.size() > kMostLevels) merge(flattest());
    return hills_;
  }

 private:
  // Of the passes to the neighbours: nothing beyond the outermost hills.
  double pass_below(std::size_t i) const { return i == 0 ? -1 : density_[hills_[i].from]; }
  double pass_above(std::size_t i) const {
    return i + 1 == hills_.size() ? -1 : density_[hills_[i].to];
  }
  // The higher pass as part of the height. The lower of two neighbours has the larger one.
  double prominence(std::size_t i) const {
    return std::max(pass_below(i), pass_above(i)) / hills_[i].height;
  }
  std::size_t flattest() const {
    std::size_t flat = 0;
    for (std::size_t i = 1; i < hills_.size(); ++i) {
      if (prominence(i) > prominence(flat)) flat = i;
    }
    return flat;
  }
  std::size_t smallest() const {
    const auto less = [](const Hill& a, const Hill& b) { return a.seconds < b.seconds; };
    return static_cast<std::size_t>(std::min_element(hills_.begin(), hills_.end(), less) -
                                    hills_.begin());
  }
  // Nothing at both passes: then to the nearer neighbour.
  bool joins_below(std::size_t i) const {
    if (pass_below(i) != pass_above(i)) return pass_below(i) > pass_above(i);
    const Hill& below = hills_[i - 1];
    const Hill& above = hills_[i + 1];
    return hills_[i].to - below.from < above.to - hills_[i].from;
  }
  void merge(std::size_t i) {
    const std::size_t lower = joins_below(i) ? i - 1 : i;
    Hill& kept = hills_[lower];
    const Hill& gone = hills_[lower + 1];
    kept = {std::max(kept.height, gone.height), kept.from, gone.to, kept.seconds + gone.seconds};
    hills_.erase(hills_.begin() + static_cast<std::ptrdiff_t>(lower) + 1);
  }

  const std::vector<double>& density_;
  std::vector<Hill> hills_;
  double seconds_ = 0;
};

double least_part(double seconds) {
  return std::max(kLeastPart, std::min(kLeastTime_s / seconds, kShortPart));
}

}  // namespace

std::vector<std::size_t> level_edges(const Histogram& histogram, double resolution_w) {
  double seconds = 0;
  for (const Drawn& drawn : histogram) seconds += drawn.seconds;
  if (!(seconds > 0)) return {};
  const Widths widths(resolution_w);
  const std::vector<double> density = density_of(histogram, widths);
  std::vector<std::size_t> edges;
  for (const Hill& hill : Hills(density).merged(least_part(seconds))) {
    const double place = static_cast<double>(hill.from) * kGrid - kReach;
    const double watts = hill.from == 0 || place <= 0 ? 0 : widths.watts(place);
    // Up to the nearest edge of a bin.
    const std::size_t bin = bin_of(watts);
    const bool up = watts - lower_w(bin) > lower_w(bin + 1) - watts;
    edges.push_back(std::min(up ? bin + 1 : bin, histogram.size()));
  }
  edges.push_back(histogram.size());
  return edges;
}

}  // namespace wattweek::metering
