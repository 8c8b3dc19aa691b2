// The histogram of watts as rows of characters.

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "fit_parts.hpp"
#include "numbers.hpp"

namespace wattweek::report {
namespace {

constexpr double kMostRows = 14;
constexpr double kShownPart = 0.999;
constexpr std::size_t kWideBar = 40;
constexpr std::size_t kNarrowBar = 16;

// 1, 2 or 5 times a power of ten, at least `least`.
double round_step(double least) {
  const double power = std::pow(10, std::floor(std::log10(least)));
  for (const double digit : {1.0, 2.0, 5.0}) {
    if (digit * power >= least * (1 - 1e-9)) return digit * power;
  }
  return 10 * power;
}

// The watts below which nearly all of the time lies.
double highest_shown(const metering::Histogram& histogram, double all_seconds) {
  double seconds = 0;
  for (std::size_t bin = 0; bin < histogram.size(); ++bin) {
    seconds += histogram[bin].seconds;
    if (seconds >= kShownPart * all_seconds) return metering::lower_w(bin + 1);
  }
  return metering::lower_w(histogram.size());
}

class Rows {
 public:
  Rows(const metering::Measured& measured, const std::vector<metering::Level>& levels)
      : levels_(levels) {
    for (const auto& bin : measured.histogram) all_seconds_ += bin.seconds;
    const double high_w = highest_shown(measured.histogram, all_seconds_);
    const double span_w = std::max(high_w - measured.lowest_w, 0.1);
    step_w_ = round_step(std::max(span_w / kMostRows, measured.resolution_w));
    first_ = std::floor(measured.lowest_w / step_w_);
    const double count = std::floor(high_w / step_w_) - first_ + 1;
    seconds_.resize(static_cast<std::size_t>(count) + 1);  // The last row is all that lies above.
    for (const auto& bin : measured.histogram) {
      if (bin.seconds > 0) seconds_[row_of(bin.mean_w())] += bin.seconds;
    }
  }

  std::vector<std::string> lines(std::size_t widest_bar) const {
    const double most = *std::max_element(seconds_.begin(), seconds_.end());
    std::vector<std::string> lines;
    for (std::size_t row = 0; row < seconds_.size(); ++row) {
      const bool is_above = row + 1 == seconds_.size();
      if (is_above && seconds_[row] == 0) continue;
      const auto bar = std::llround(static_cast<double>(widest_bar) * seconds_[row] / most);
      const double percent = 100 * seconds_[row] / all_seconds_;
      std::string line = fmt::format("{:>{}}  {:<{}} {:>4} %", name(row, is_above), name_width(),
                                     std::string(static_cast<std::size_t>(bar), '#'), widest_bar,
                                     percent > 0 && percent < 1 ? "< 1" : fixed(percent, 0));
      lines.push_back(line + level_names(row));
    }
    return lines;
  }

 private:
  std::size_t row_of(double watts) const {
    const double row = std::floor(watts / step_w_) - first_;
    return static_cast<std::size_t>(std::clamp(row, 0.0, static_cast<double>(seconds_.size() - 1)));
  }

  double from_w(std::size_t row) const { return (first_ + static_cast<double>(row)) * step_w_; }

  std::string name(std::size_t row, bool is_above) const {
    const int decimals = step_w_ >= 1 ? 0 : step_w_ >= 0.1 ? 1 : 2;
    if (is_above) return fixed(from_w(row), decimals) + " W up";
    return fmt::format("{} to {} W", fixed(from_w(row), decimals),
                       fixed(from_w(row + 1), decimals));
  }

  std::size_t name_width() const {
    std::size_t width = 0;
    for (std::size_t row = 0; row < seconds_.size(); ++row) {
      width = std::max(width, name(row, row + 1 == seconds_.size()).size());
    }
    return width;
  }

  std::string level_names(std::size_t row) const {
    std::string names;
    for (const metering::Level& level : levels_) {
      if (row_of(level.watts) == row) {
        names += fmt::format("{}{}", names.empty() ? "  " : ", ", state_name(level.state));
      }
    }
    return names;
  }

  const std::vector<metering::Level>& levels_;
  double all_seconds_ = 0;
  double step_w_ = 1;
  double first_ = 0;
  std::vector<double> seconds_;
};

}  // namespace

Picture watts_picture(const metering::Measured& measured,
                      const std::vector<metering::Level>& levels) {
  const Rows rows(measured, levels);
  return {"Part of the time at these watts:", "", rows.lines(kWideBar), rows.lines(kNarrowBar)};
}

}  // namespace wattweek::report
