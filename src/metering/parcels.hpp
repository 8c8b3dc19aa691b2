#pragma once
// The log in parcels: what starts within one cell of time, with the same units in use and watts of
// one class, is one.

#include <array>

#include "bins.hpp"
#include "interval.hpp"
#include "wattweek/metering/measuring.hpp"

namespace wattweek::metering {

class Parcels {
 public:
  /// More than these, and cells become twice as long.
  static constexpr std::size_t kMost = std::size_t{1} << 19;

  Parcels();

  /// Cells count from here.
  void start_at(logs::Microseconds first_us) { first_us_ = first_us; }
  /// What is added from now on starts in the cell of this instant, and has these units in use. Says
  /// when the cell ends.
  logs::Microseconds turn_to(logs::Microseconds at_us, std::uint32_t design);

  void add(std::size_t bin, double seconds, double joules) {
    const std::size_t watt_class = bin / kBinsOfClass;
    if (parcel_of_class_[watt_class] < first_of_turn_) open(watt_class);
    Drawn& drawn = parcels_[parcel_of_class_[watt_class]].drawn;
    drawn.seconds += seconds;
    drawn.joules += joules;
  }

  double parcel_seconds() const { return in_seconds(cell_us_); }
  /// In order of time; equal ones in one. To be called once, last.
  std::vector<Parcel> in_order();

 private:
  // Below an hour, which is what a fit looks back at the least, time must stay told apart.
  static constexpr logs::Microseconds kLongestCell_us = kHour_us;

  void open(std::size_t watt_class);
  void merge_equal();
  void double_cells();

  logs::Microseconds first_us_ = 0;
  logs::Microseconds cell_us_ = 60 * kSecond_us;
  std::int64_t cell_ = 0;
  std::uint32_t design_ = 0;
  std::size_t most_ = kMost;
  std::size_t first_of_turn_ = 0;
  // Where the parcel of a class is, if it was opened since the last turn.
  std::vector<std::size_t> parcel_of_class_;
  std::vector<Parcel> parcels_;
};

}  // namespace wattweek::metering
