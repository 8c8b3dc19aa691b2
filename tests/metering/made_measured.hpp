#pragma once
// Logs made in tests: intervals of mean watts, added to all the sums of Measured in the simplest
// way, without a reader.

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <vector>

#include "wattweek/metering/measured.hpp"

namespace wattweek::metering {

/// 1 January 1973 was a Monday: 3 x 365 + 1 days after 1970-01-01.
inline constexpr std::int64_t kMondayHour = std::int64_t{1096} * 24;

class MadeMeasured {
 public:
  /// Begins at a local hour; cells of so many seconds.
  explicit MadeMeasured(double cell_s = 60, std::int64_t first_hour = kMondayHour)
      : cell_s_(cell_s) {
    made_.first_hour = first_hour;
    made_.parcel_seconds = cell_s;
    made_.designs.emplace_back();
  }

  /// Rows of units in use, the first of them "none".
  MadeMeasured& with_designs(std::vector<Eigen::VectorXd> designs) {
    made_.designs = std::move(designs);
    return *this;
  }
  MadeMeasured& with_resolution(double resolution_w) {
    made_.resolution_w = resolution_w;
    return *this;
  }

  /// An interval of these mean watts; cut at the ends of cells and hours.
  MadeMeasured& add(double seconds, double watts, std::size_t design = 0) {
    while (seconds > 1e-9) {
      const double to_cell_s = cell_s_ - std::fmod(at_s_, cell_s_);
      const double to_hour_s = 3600 - std::fmod(at_s_, 3600);
      const double piece_s = std::min(seconds, std::min(to_cell_s, to_hour_s));
      add_piece(piece_s, watts, design);
      at_s_ += piece_s;
      seconds -= piece_s;
    }
    return *this;
  }
  /// A hole.
  MadeMeasured& skip(double seconds) {
    at_s_ += seconds;
    return *this;
  }
  double at_s() const { return at_s_; }
  const Measured& measured() const { return made_; }

 private:
  static void sum_up(Drawn& drawn, double seconds, double watts) {
    drawn.seconds += seconds;
    drawn.joules += seconds * watts;
  }

  void add_piece(double seconds, double watts, std::size_t design) {
    if (!(made_.kept.seconds > 0)) made_.lowest_w = watts;
    made_.lowest_w = std::min(made_.lowest_w, watts);
    made_.highest_w = std::max(made_.highest_w, watts);
    sum_up(made_.kept, seconds, watts);
    const auto hour = static_cast<std::size_t>(at_s_ / 3600);
    if (hour >= made_.hours.size()) made_.hours.resize(hour + 1);
    sum_up(made_.hours[hour], seconds, watts);
    const std::size_t bin = bin_of(watts);
    if (bin >= made_.histogram.size()) made_.histogram.resize(bin + 1);
    sum_up(made_.histogram[bin], seconds, watts);
    sum_up(parcel_of(bin / kBinsOfClass, design).drawn, seconds, watts);
  }

  Parcel& parcel_of(std::size_t watt_class, std::size_t design) {
    const auto minute = static_cast<std::int32_t>(at_s_ / cell_s_);
    for (auto at = made_.parcels.rbegin(); at != made_.parcels.rend(); ++at) {
      if (at->minute != minute) break;
      if (at->watt_class == watt_class && at->design == design) return *at;
    }
    made_.parcels.push_back({minute, static_cast<std::uint16_t>(watt_class),
                             static_cast<std::uint32_t>(design), Drawn{}});
    return made_.parcels.back();
  }

  double cell_s_;
  double at_s_ = 0;
  Measured made_;
};

}  // namespace wattweek::metering
